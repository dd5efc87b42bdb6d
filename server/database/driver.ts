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
import { namesOf } from './read-together.ts';

const CHANGING = new Set(['INSERT', 'UPDATE', 'DELETE', 'MERGE']);
const ROLLBACK = 'rollback';
const COMMITTED = 'COMMIT';

class LentConnection implements DatabaseConnection {
  readonly #client: pg.PoolClient;
  /** The transaction it was lent for is committed: nothing may be asked outside one, where no shop is set. */
  #over = false;
  broken = false;

  constructor(client: pg.PoolClient) {
    this.#client = client;
  }

  async executeQuery<R>(query: CompiledQuery): Promise<QueryResult<R>> {
    if (this.#over) throw new Error('this transaction has made its last read');
    const answers = await this.#ask(query);
    const names = namesOf(query);
    if (names !== undefined) return { rows: byName(names, answers) };
    const told = answers.findLast((each) => each.fields.length > 0) ?? answers.at(-1);
    if (told === undefined) return { rows: [] };
    return {
      rows: told.rows,
      ...(CHANGING.has(told.command) ? { numAffectedRows: BigInt(told.rowCount ?? 0) } : {}),
    };
  }

  /** One answer for each statement of the text. */
  async #ask(query: CompiledQuery): Promise<readonly pg.QueryResult[]> {
    const answered = await this.#client.query(query.sql, [...query.parameters]);
    const answers: readonly pg.QueryResult[] = Array.isArray(answered) ? answered : [answered];
    const last = answers.at(-1)?.command;
    if (last === 'ROLLBACK' && query.sql !== ROLLBACK) {
      // PostgreSQL answers so to a commit after an error that somebody caught.
      throw new Error('the transaction was rolled back instead of committed');
    }
    this.#over = last === COMMITTED;
    return answers;
  }

  /** Ends what is still under way; after a commit there is nothing left to undo. */
  async rollback(): Promise<void> {
    if (!this.#over) await this.executeQuery(CompiledQuery.raw(ROLLBACK));
  }

  streamQuery(): never {
    throw new Error('rows are read whole, not as a stream');
  }

  release(): void {
    this.#client.release(this.broken);
  }
}

/** One row that has the rows of each statement under its name. */
function byName(names: readonly string[], answers: readonly pg.QueryResult[]): pg.QueryResult['rows'] {
  const told = answers.filter(({ fields }) => fields.length > 0);
  if (told.length !== names.length) throw new Error(`${names.length} statements gave ${told.length} answers`);
  return [Object.fromEntries(names.map((name, index) => [name, told[index]?.rows]))];
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
      await connection.rollback();
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
