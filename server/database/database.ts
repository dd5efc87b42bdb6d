import { Kysely, PostgresDialect, sql, type Transaction } from 'kysely';
import pg from 'pg';
import { ServiceBusy } from '../problems/failure.ts';
import { busyWhenUnreachable, codeOf } from './busy.ts';
import type { Tables } from './tables.ts';

export type Tx = Transaction<Tables>;

const UUID = /^[0-9a-f]{8}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{12}$/;
const HASH = /^[0-9a-f]{64}$/;
const TRY_AGAIN = new Set(['40001', '40P01']);
/** After the first try. */
const RETRIES = 3;

export interface Database {
  /** One transaction in which only the rows of `shopId` exist. */
  inShop<T>(shopId: string, work: (tx: Tx) => Promise<T>): Promise<T>;
  /** One transaction in which only the row that holds this secret's hash exists. */
  bySecret<T>(secretHash: string, work: (tx: Tx) => Promise<T>): Promise<T>;
  /** Asks the database for a sign of life, and the newest migration it has. */
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
  const db = new Kysely<Tables>({ dialect: new PostgresDialect({ pool }) });

  async function attempt<T>(setting: string, work: (tx: Tx) => Promise<T>): Promise<T> {
    for (let retries = 0; ; retries += 1) {
      try {
        return await db.transaction().execute(async (tx) => {
          await sql.raw(setting).execute(tx);
          return work(tx);
        });
      } catch (error) {
        if (!TRY_AGAIN.has(codeOf(error))) throw busyWhenUnreachable(error);
        if (retries >= RETRIES) throw new ServiceBusy('the database was too busy for this', error);
      }
    }
  }

  return {
    pool,
    inShop(shopId, work) {
      if (!UUID.test(shopId)) throw new Error('a shop id must be a UUID');
      // SET LOCAL itself, not set_config(): only the command is passed on to the nodes of a distributed server.
      return attempt(`set local app.shop = '${shopId}'`, work);
    },
    bySecret(secretHash, work) {
      if (!HASH.test(secretHash)) throw new Error('a secret is looked up by its SHA-256 in hex');
      return attempt(`set local app.lookup = '${secretHash}'`, work);
    },
    async newestMigration() {
      const { rows } = await pool.query<{ newest: string | null }>('select newest_migration() as newest');
      return rows[0]?.newest ?? '';
    },
    close: () => db.destroy(),
  };
}

/** Turns a transaction found by a secret into one of the shop that the secret opened. */
export async function enterShop(tx: Tx, shopId: string): Promise<void> {
  if (!UUID.test(shopId)) throw new Error('a shop id must be a UUID');
  await sql.raw(`set local app.shop = '${shopId}'`).execute(tx);
}
