import { createViews } from '../views/engine.ts';
import { buildApp } from './app.ts';
import { keepStops } from './assessment/stops/keep-stops.ts';
import { computeLimits } from './auth/compute-limits.ts';
import { signInLimits } from './auth/sign-in-limits.ts';
import { loadComputations } from './compute/registry.ts';
import { readConfig, SettingFaults } from './config/config.ts';
import { openDatabase } from './database/database.ts';
import { startEmbedded } from './database/embedded/start-embedded.ts';
import { migrate, migrationNames } from './database/migrate.ts';
import { ensureServiceRole, serviceUrl } from './database/service-role.ts';
import { openHub } from './events/hub.ts';
import { announce } from './start/announce.ts';
import { endService } from './start/ending.ts';
import { firstRun } from './start/first-run.ts';
import { openRetention, type Retention } from './start/retention.ts';
import { loadAssets } from './web/pages/assets.ts';
import { openWork } from './work/work.ts';

async function main(): Promise<void> {
  const config = readConfig(process.env);
  const say = (message: string) =>
    process.stdout.write(`${JSON.stringify({ level: 30, time: Date.now(), msg: message })}\n`);
  const embedded =
    config.DATABASE_URL === undefined
      ? await startEmbedded({ dataDir: config.DATA_DIR, log: say })
      : undefined;
  const ownerUrl = config.DATABASE_URL ?? embedded?.ownerUrl ?? '';
  if (config.SERVICE_DATABASE_URL === undefined) await ensureServiceRole(ownerUrl);
  await migrate(ownerUrl);

  const db = openDatabase(config.SERVICE_DATABASE_URL ?? serviceUrl(ownerUrl), {
    poolSize: config.POOL_SIZE,
    onIdleError: (error) => say(`a database connection was lost: ${error.message}`),
  });
  const serviceAt = config.SERVICE_DATABASE_URL ?? serviceUrl(ownerUrl);
  const hub = openHub(serviceAt, say);
  const lifecycle = { draining: false };
  const [computations, assets, names] = await Promise.all([
    loadComputations(),
    loadAssets(),
    migrationNames(),
  ]);
  const deps = {
    config,
    db,
    computations,
    assets,
    views: createViews(),
    signInLimits: signInLimits(db.pool),
    computeLimits: computeLimits(db.pool, config.COMPUTE_PER_MINUTE),
    work: openWork(say),
    secure: config.PUBLIC_URL?.startsWith('https:') ?? config.NODE_ENV === 'production',
    newestMigration: names.at(-1) ?? '',
    lifecycle,
    hub,
    guard: keepStops,
    now: () => new Date(),
  };
  const app = await buildApp(deps);

  let ending = false;
  let retention: Retention | undefined;
  const end = async (signal: string): Promise<void> => {
    if (ending) return;
    ending = true;
    retention?.close();
    say(`${signal}: no new requests; ending`);
    await endService({
      lifecycle,
      app,
      hub,
      db,
      work: deps.work,
      stopDatabase: async () => embedded?.stop(),
    });
    process.exit(0);
  };
  for (const signal of ['SIGTERM', 'SIGINT'] as const) {
    process.on(signal, () => {
      end(signal).catch((error: unknown) => {
        say(`ending failed: ${String(error)}`);
        process.exit(1);
      });
    });
  }

  const first = await firstRun(deps, ownerUrl);
  retention = openRetention(db.pool, say);
  await app.listen({ host: config.HOST, port: config.PORT });
  const address = app.server.address();
  const port = typeof address === 'object' && address !== null ? address.port : config.PORT;
  announce(config, port, first);
}

main().catch((error: unknown) => {
  const text =
    error instanceof SettingFaults
      ? error.message
      : error instanceof Error
        ? (error.stack ?? error.message)
        : String(error);
  process.stderr.write(`${text}\n`);
  process.exit(1);
});
