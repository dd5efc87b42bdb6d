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
/** The server itself then refuses to write. */
export const BEGIN_READING = 'begin read only';

class LentConnection implements DatabaseConnection {
  readonly #client: pg.PoolClient;
  /** What was read so far in a transaction that only reads. */
  #read: Map<string, pg.QueryResult> | undefined;
  broken = false;

  constructor(client: pg.PoolClient) {
    this.#client = client;
  }

  async executeQuery<R>(query: CompiledQuery): Promise<QueryResult<R>> {
    const told = await this.#once(query);
    if (told === undefined) return { rows: [] };
    return {
      rows: told.rows,
      ...(CHANGING.has(told.command) ? { numAffectedRows: BigInt(told.rowCount ?? 0) } : {}),
    };
  }

  /** The parts of a page each ask for what they need; where nothing can have changed, a question is asked once. */
  async #once(query: CompiledQuery): Promise<pg.QueryResult | undefined> {
    if (query.sql.startsWith(BEGIN_READING)) this.#read = new Map();
    if (this.#read === undefined || !query.sql.startsWith('select ')) return this.#ask(query);
    const question = JSON.stringify([query.sql, query.parameters]);
    const known = this.#read.get(question) ?? (await this.#ask(query));
    if (known !== undefined) this.#read.set(question, known);
    return known;
  }

  /** Several statements in one text answer with the rows of the last that had any to give. */
  async #ask(query: CompiledQuery): Promise<pg.QueryResult | undefined> {
    const answered = await this.#client.query(query.sql, [...query.parameters]);
    const several: readonly pg.QueryResult[] = Array.isArray(answered) ? answered : [answered];
    if (several.at(-1)?.command === 'ROLLBACK' && query.sql !== ROLLBACK) {
      // PostgreSQL answers so to a commit after an error that somebody caught.
      throw new Error('the transaction was rolled back instead of committed');
    }
    return several.findLast((each) => each.fields.length > 0) ?? several.at(-1);
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
