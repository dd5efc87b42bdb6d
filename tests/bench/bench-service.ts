import pg from 'pg';
import { buildApp } from '../../server/app.ts';
import { keepStops } from '../../server/assessment/stops/keep-stops.ts';
import { computeLimits } from '../../server/auth/compute-limits.ts';
import { hashOf, newSecret } from '../../server/auth/secrets.ts';
import { signInLimits } from '../../server/auth/sign-in-limits.ts';
import { loadComputations } from '../../server/compute/registry.ts';
import { readConfig } from '../../server/config/config.ts';
import { openDatabase } from '../../server/database/database.ts';
import { migrate, migrationNames } from '../../server/database/migrate.ts';
import { ensureServiceRole, serviceUrl } from '../../server/database/service-role.ts';
import { openHub } from '../../server/events/hub.ts';
import { seedDemo } from '../../server/start/demo.ts';
import type { Deps } from '../../server/web/deps.ts';
import { loadAssets } from '../../server/web/pages/assets.ts';
import { cookieNames } from '../../server/web/principals.ts';
import { openWork } from '../../server/work/work.ts';
import { createViews } from '../../views/engine.ts';
import { startThrowaway } from '../tools/throwaway-postgres.ts';
import { portOf } from './http.ts';
import { recorder } from './recorder.ts';

/** The service on a durable-as-throw-away database with the demo call, listening on loopback. */
export async function benchService() {
  const server = await startThrowaway();
  await ensureServiceRole(server.ownerUrl);
  await migrate(server.ownerUrl);
  const url = serviceUrl(server.ownerUrl);
  const db = openDatabase(url, { poolSize: 10, onIdleError: () => undefined });
  const views = createViews();
  const heard = recorder(db.pool, views);
  const config = readConfig({
    NODE_ENV: 'development',
    LOG_LEVEL: 'silent',
    COMPUTE_PER_MINUTE: '1000000000',
  });
  const hub = openHub(url, () => undefined);
  const deps: Deps = {
    guard: keepStops,
    config,
    db,
    hub,
    computations: await loadComputations(),
    views,
    assets: await loadAssets(),
    signInLimits: signInLimits(db.pool),
    computeLimits: computeLimits(db.pool, config.COMPUTE_PER_MINUTE),
    work: openWork(() => undefined),
    secure: false,
    newestMigration: (await migrationNames()).at(-1) ?? '',
    lifecycle: { draining: false },
    now: () => new Date(),
  };
  const app = await buildApp(deps);
  const demo = await seedDemo(deps);
  if (demo.kind !== 'demo') throw new Error('the bench needs the demo call');
  await app.listen({ host: '127.0.0.1', port: 0 });
  const owner = new pg.Client({ connectionString: server.ownerUrl });
  await owner.connect();
  const staff = await owner.query<{ shop_id: string; id: string }>(
    'select shop_id, id from staff order by created_at limit 1',
  );
  const setUp = await owner.query<{ id: string; build_id: string }>(
    'select id, build_id from set_up limit 1',
  );
  const { secret } = newSecret('session');
  const who = staff.rows[0];
  const at = setUp.rows[0];
  if (who === undefined || at === undefined) throw new Error('the demo is empty');
  await owner.query(
    `insert into staff_session (shop_id, staff_id, token_hash, expires_at) values ($1, $2, $3, now() + interval '1 day')`,
    [who.shop_id, who.id, hashOf(secret)],
  );
  await owner.end();
  return {
    app,
    deps,
    url,
    port: portOf(app.server),
    heard,
    bearer: { authorization: `Bearer ${secret}` },
    cookie: { cookie: `${cookieNames(deps.secure).desk}=${secret}` },
    callId: demo.callId,
    buildId: at.build_id,
    setUpId: at.id,
    async stop() {
      hub.drain();
      await app.close();
      await hub.close();
      await deps.work.close();
      await db.close();
      await server.stop();
    },
  };
}

export type BenchService = Awaited<ReturnType<typeof benchService>>;
