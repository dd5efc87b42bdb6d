import { Kysely, sql } from 'kysely';
import pg from 'pg';
import { ServiceBusy } from '../problems/failure.ts';
import { busyWhenUnreachable, codeOf } from './busy.ts';
import { lendingDialect } from './driver.ts';
import { isCommitted } from './read-together.ts';
import { closing, type FixedQuery, lookUp, shopTransaction, type Tx, textOf } from './statements.ts';
import type { Tables } from './tables.ts';

export type { Tx } from './statements.ts';

const TRY_AGAIN = new Set(['40001', '40P01']);
/** After the first try. */
const RETRIES = 3;

/** Whether a transaction may write; all that one reads which may not is of one and the same moment. */
export type Access = 'read' | 'write';

const BEGIN: Readonly<Record<Access, string>> = {
  read: 'begin isolation level repeatable read, read only',
  write: 'begin',
};

export interface Database {
  /** One transaction in which only the rows of `shopId` exist. */
  shopTransaction<T>(shopId: string, work: (tx: Tx) => Promise<T>, access?: Access): Promise<T>;
  /** One transaction in which only the row that holds this secret's hash exists. */
  bySecret<T>(secretHash: string, work: (tx: Tx) => Promise<T>): Promise<T>;
  /** Likewise; what `first` reads comes with the opening, in one message to the server and back. */
  bySecretReading<Row, T>(
    secretHash: string,
    first: FixedQuery<Row>,
    work: (tx: Tx, rows: Row[]) => Promise<T>,
    access?: Access,
  ): Promise<T>;
  /** Asks the database for a sign of life, for the service's rights, and for the newest migration it has. */
  newestMigration(): Promise<string>;
  readonly pool: pg.Pool;
  close(): Promise<void>;
}

/** bigint as number: every bigint of ours is a sequence number far below 2^53. */
const types = {
  getTypeParser: (oid: number, format?: 'text' | 'binary') => {
    if (oid === pg.types.builtins.INT8) return Number;
    if (oid === pg.types.builtins.DATE) return String;
    return pg.types.getTypeParser(oid, format);
  },
};

export function openDatabase(
  url: string,
  options: { poolSize: number; onIdleError: (error: Error) => void },
): Database {
  const pool = new pg.Pool({
    connectionString: url,
    max: options.poolSize,
    // pg waits for ever by default: a full pool or a dead server must become an answer.
    connectionTimeoutMillis: 5_000,
    idleTimeoutMillis: 30_000,
    types,
  });
  // A server that goes away kills idle clients; without a listener that would end the process.
  pool.on('error', options.onIdleError);
  // The pool listens to idle clients alone. One that is lent out and between two statements when its server dies
  // has nobody; its next statement fails by itself.
  pool.on('connect', (client) => void client.on('error', () => undefined));
  const db = new Kysely<Tables>({ dialect: lendingDialect(pool) });

  async function attempt<Row, T>(
    opening: string,
    work: (tx: Tx, rows: Row[]) => Promise<T>,
    access: Access = 'write',
  ): Promise<T> {
    for (let retries = 0; ; retries += 1) {
      try {
        return await db.transaction().execute(async (tx) => {
          const { rows } = await sql.raw<Row>(`${BEGIN[access]}; ${opening}`).execute(tx);
          const answer = await work(tx, rows);
          if (!isCommitted(tx)) await sql.raw(closing(tx)).execute(tx);
          return answer;
        });
      } catch (error) {
        if (!TRY_AGAIN.has(codeOf(error))) throw busyWhenUnreachable(error);
        if (retries >= RETRIES) throw new ServiceBusy('the database was too busy for this', error);
      }
    }
  }

  return {
    pool,
    shopTransaction(shopId, work, access) {
      return attempt(shopTransaction(shopId), work, access);
    },
    bySecret(secretHash, work) {
      return attempt(lookUp(secretHash), work);
    },
    bySecretReading(secretHash, first, work, access) {
      return attempt(`${lookUp(secretHash)}; ${textOf(db, first)}`, work, access);
    },
    async newestMigration() {
      // A database that was copied without its rights answers to the first, and refuses the second.
      const { rows } = await pool.query<{ newest: string | null }>(
        'select newest_migration() as newest, exists (select 1 from event where false)',
      );
      return rows[0]?.newest ?? '';
    },
    close: () => db.destroy(),
  };
}
