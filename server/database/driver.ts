import {
  CompiledQuery,
  type DatabaseConnection,
  type Dialect,
  type Driver,
  type Kysely,
  PostgresAdapter,
  PostgresIntrospector,
  PostgresQueryCompiler,
  type QueryResult,
} from 'kysely';
import type pg from 'pg';

const CHANGING = new Set(['INSERT', 'UPDATE', 'DELETE', 'MERGE']);
const ROLLBACK = 'rollback';

class LentConnection implements DatabaseConnection {
  readonly #client: pg.PoolClient;
  broken = false;

  constructor(client: pg.PoolClient) {
    this.#client = client;
  }

  /** Several statements in one text answer with the rows of the last that had any to give. */
  async executeQuery<R>(query: CompiledQuery): Promise<QueryResult<R>> {
    const answered = await this.#client.query(query.sql, [...query.parameters]);
    const several: readonly pg.QueryResult[] = Array.isArray(answered) ? answered : [answered];
    if (several.at(-1)?.command === 'ROLLBACK' && query.sql !== ROLLBACK) {
      // PostgreSQL answers so to a commit after an error that somebody caught.
      throw new Error('the transaction was rolled back instead of committed');
    }
    const told = several.findLast((each) => each.fields.length > 0) ?? several.at(-1);
    if (told === undefined) return { rows: [] };
    return {
      rows: told.rows,
      ...(CHANGING.has(told.command) ? { numAffectedRows: BigInt(told.rowCount ?? 0) } : {}),
    };
  }

  streamQuery(): never {
    throw new Error('rows are read whole, not as a stream');
  }

  release(): void {
    this.#client.release(this.broken);
  }
}

/**
 * Lends a connection of the pool for a transaction. It says neither `begin` nor `commit`: who opens a transaction
 * sends both along with other statements (`database.ts`), since each message by itself is a wait for the server.
 */
class LendingDriver implements Driver {
  readonly #pool: pg.Pool;

  constructor(pool: pg.Pool) {
    this.#pool = pool;
  }

  async init(): Promise<void> {}

  async acquireConnection(): Promise<LentConnection> {
    return new LentConnection(await this.#pool.connect());
  }

  async beginTransaction(): Promise<void> {}

  async commitTransaction(): Promise<void> {}

  async rollbackTransaction(connection: LentConnection): Promise<void> {
    try {
      await connection.executeQuery(CompiledQuery.raw(ROLLBACK));
    } catch (error) {
      connection.broken = true;
      throw error;
    }
  }

  async releaseConnection(connection: LentConnection): Promise<void> {
    connection.release();
  }

  destroy(): Promise<void> {
    return this.#pool.end();
  }
}

export function lendingDialect(pool: pg.Pool): Dialect {
  return {
    createDriver: () => new LendingDriver(pool),
    createQueryCompiler: () => new PostgresQueryCompiler(),
    createAdapter: () => new PostgresAdapter(),
    createIntrospector: (db: Kysely<unknown>) => new PostgresIntrospector(db),
  };
}
