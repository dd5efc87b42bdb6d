import type { FastifyInstance } from 'fastify';
import { buildApp } from '../../server/app.ts';
import { keepStops } from '../../server/assessment/stops/keep-stops.ts';
import { computeLimits } from '../../server/auth/compute-limits.ts';
import { hashPassword } from '../../server/auth/passwords.ts';
import type { Role } from '../../server/auth/principal.ts';
import { emailKey, newSecret } from '../../server/auth/secrets.ts';
import { signInLimits } from '../../server/auth/sign-in-limits.ts';
import { type Config, readConfig } from '../../server/config/config.ts';
import { openDatabase } from '../../server/database/database.ts';
import { migrationNames } from '../../server/database/migrate.ts';
import { openHub } from '../../server/events/hub.ts';
import type { Deps } from '../../server/web/deps.ts';
import { openWork } from '../../server/work/work.ts';
import { type Answered, type Asked, addressOf, ask } from './http.ts';
import { madeOnce } from './made-once.ts';
import { strictAnswers } from './strict-answers.ts';
import { type TestDatabase, testDatabase } from './test-database.ts';

export const PASSWORD = 'three tall oak trees';

/** A person of a shop, with a session for JSON and cookies for pages. */
export interface Person {
  readonly shopId: string;
  readonly staffId: string;
  readonly email: string;
  readonly token: string;
  readonly bearer: { readonly authorization: string };
  readonly cookies: { readonly 'benchcall-desk': string };
}

export interface TestService {
  readonly app: FastifyInstance;
  readonly deps: Deps;
  readonly database: TestDatabase;
  /** A shop of its own with one person in it. */
  person(options?: { shopId?: string; roles?: Role[]; name?: string }): Promise<Person>;
  /** Sends a request over a connection, and gives back its answer. */
  request(asked: Asked | string): Promise<Answered>;
  /** Listens on a free port of loopback. */
  listen(): Promise<string>;
  /** The same service once more over the same database, as a second process of it would be. */
  secondProcess(options?: { listenUrl?: string }): Promise<Process>;
  close(): Promise<void>;
}

/** One process of a service that may have several. */
export interface Process {
  readonly app: FastifyInstance;
  readonly deps: Deps;
  listen(): Promise<string>;
  close(): Promise<void>;
}

/** What another process shares is the database alone: its connections and its hub are its own. */
async function anotherProcess(first: Deps, serviceUrl: string, listenUrl = serviceUrl): Promise<Process> {
  const db = openDatabase(serviceUrl, { poolSize: 5, onIdleError: () => undefined });
  const deps: Deps = {
    ...first,
    db,
    signInLimits: signInLimits(db.pool),
    computeLimits: computeLimits(db.pool, first.config.COMPUTE_PER_MINUTE),
    lifecycle: { draining: false },
    hub: openHub(listenUrl, () => undefined),
  };
  const app = await buildApp(deps);
  await app.ready();
  let closing: Promise<void> | undefined;
  async function end(): Promise<void> {
    await app.close();
    await deps.hub.close();
    await db.close();
  }
  return {
    app,
    deps,
    listen: () => addressOf(app),
    close() {
      closing ??= end();
      return closing;
    },
  };
}

let passwordHash: Promise<string> | undefined;

/** The whole service as the process builds it, on a database of its own. */
export async function testService(
  settings: Partial<Record<keyof Config, string>> = {},
): Promise<TestService> {
  const database = await testDatabase();
  const config = readConfig({ NODE_ENV: 'test', LOG_LEVEL: 'silent', ...settings });
  const names = await migrationNames();
  const answers = strictAnswers();
  const deps: Deps = {
    config,
    db: database.db,
    ...(await madeOnce()),
    signInLimits: signInLimits(database.db.pool),
    computeLimits: computeLimits(database.db.pool, config.COMPUTE_PER_MINUTE),
    work: openWork(() => undefined),
    guard: keepStops,
    secure: config.PUBLIC_URL?.startsWith('https:') ?? config.NODE_ENV === 'production',
    newestMigration: names.at(-1) ?? '',
    lifecycle: { draining: false },
    hub: openHub(database.serviceUrl, () => undefined),
    checkAnswer: answers.check,
    now: () => new Date(),
  };
  const app = await buildApp(deps);
  await app.ready();
  const others: Process[] = [];
  return {
    app,
    deps,
    database,
    async person(options = {}) {
      passwordHash ??= hashPassword(PASSWORD);
      const shopId = options.shopId ?? crypto.randomUUID();
      const email = `${crypto.randomUUID()}@test.invalid`;
      const hash = await passwordHash;
      const { secret, hash: tokenHash } = newSecret('session');
      const staffId = await database.db.shopTransaction(shopId, async (tx) => {
        if (options.shopId === undefined)
          await tx
            .insertInto('shop')
            .values({ id: shopId, name: `Test shop ${shopId.slice(0, 4)}` })
            .execute();
        const { id } = await tx
          .insertInto('staff')
          .values({
            shop_id: shopId,
            name: options.name ?? 'Test person',
            email,
            email_key: emailKey(email),
            password_hash: hash,
            roles: options.roles ?? ['desk', 'quality', 'administrator'],
          })
          .returning('id')
          .executeTakeFirstOrThrow();
        await tx
          .insertInto('staff_session')
          .values({
            shop_id: shopId,
            staff_id: id,
            token_hash: tokenHash,
            expires_at: new Date(Date.now() + 3_600_000),
          })
          .execute();
        return id;
      });
      return {
        shopId,
        staffId,
        email,
        token: secret,
        bearer: { authorization: `Bearer ${secret}` },
        cookies: { 'benchcall-desk': secret },
      };
    },
    request(this: TestService, asked: Asked | string) {
      // A test may put another app in the place of this one.
      return ask(this.app, asked);
    },
    listen: () => addressOf(app),
    async secondProcess({ listenUrl } = {}) {
      const process = await anotherProcess(deps, database.serviceUrl, listenUrl);
      others.push(process);
      return process;
    },
    async close() {
      for (const other of others) await other.close();
      deps.hub.drain();
      await app.close();
      await deps.hub.close();
      await deps.work.close();
      await database.drop();
      if (answers.faults.length > 0) throw new Error(answers.faults.join('\n'));
    },
  };
}
