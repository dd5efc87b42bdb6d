import { afterAll, beforeAll, expect, test } from 'vitest';
import { createFirstAdministrator, makeFirstLink } from '../../server/auth/first-administrator.ts';
import { hashOf } from '../../server/auth/secrets.ts';
import { readConfig } from '../../server/config/config.ts';
import { firstRun } from '../../server/start/first-run.ts';
import { type TestService, testService } from '../tools/service.ts';

/** Several processes start on one empty database: one first link works, and none once there is a shop. */
let service: TestService;
beforeAll(async () => {
  service = await testService();
});
afterAll(() => service.close());

const PERSON = { shop: 'A shop', name: 'First', password: 'three tall oak trees', from: '192.0.2.1' };
const use = (secret: string) =>
  createFirstAdministrator(
    service.deps.db,
    hashOf(secret),
    { ...PERSON, email: `${crypto.randomUUID()}@test.invalid` },
    new Date(),
  );

test('of the links of starts at the same moment one works, and after it there are no more', async () => {
  const config = readConfig({
    NODE_ENV: 'production',
    DATABASE_URL: service.database.ownerUrl,
    PUBLIC_URL: 'https://bench.test',
  });
  const start = () => firstRun({ ...service.deps, config }, service.database.ownerUrl);
  const first = await start();
  const starts = [first, ...(await Promise.all([start(), start(), start()])), await start()];
  const secrets = starts.flatMap((each) => (each.kind === 'first-administrator' ? [each.secret] : []));
  expect(secrets).toHaveLength(5);
  const { rows } = await service.database.asOwner(
    'select count(*)::int as n from first_administrator_link where used_at is null',
  );
  expect(rows[0]?.n).toBe(1);
  const newest = secrets.pop() ?? '';
  for (const older of secrets) expect(await use(older)).toBe(false);
  expect(await use(newest)).toBe(true);
  const shops = await service.database.asOwner('select count(*)::int as n from shop');
  expect(shops.rows[0]?.n).toBe(1);
  expect(await start()).toEqual({ kind: 'nothing' });
});

test('the database holds one open link, whatever a process does', async () => {
  const anyShop = async () => false;
  await makeFirstLink(service.deps.db, anyShop, new Date(Date.now() + 60_000));
  await expect(
    service.database.asOwner(
      `insert into first_administrator_link (token_hash, expires_at) values ($1, now() + interval '1 day')`,
      [hashOf('another')],
    ),
  ).rejects.toThrow(/first_administrator_link_open/);
});
