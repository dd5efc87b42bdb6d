import { connect, type Socket } from 'node:net';
import pg from 'pg';
import { afterAll, beforeAll, expect, onTestFinished, test } from 'vitest';
import { memberOf } from '../../shared/member.ts';
import { type Spawned, spawnService } from '../tools/spawn-service.ts';
import { type TestDatabase, testDatabase } from '../tools/test-database.ts';

/** The real process, told to end while somebody is still there; `ending-times.test.ts` has how long it takes. */
let database: TestDatabase;
beforeAll(async () => {
  database = await testDatabase();
});
afterAll(() => database.drop());

async function start(): Promise<Spawned> {
  const service = await spawnService({ DATABASE_URL: database.ownerUrl, LOG_LEVEL: 'info' });
  onTestFinished(() => void service.child.kill('SIGKILL'));
  return service;
}

async function signIn(service: Spawned): Promise<Record<string, string>> {
  const [, email = '', password = ''] = /with (\S+) and the password (.+)$/m.exec(service.said()) ?? [];
  if (email === '') {
    // A later start on the same database has the demo already and prints it again.
    throw new Error(`no sign-in printed: ${service.said()}`);
  }
  const response = await fetch(`${service.base}/api/v1/sessions`, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify({ email, password }),
  });
  expect(response.status).toBe(201);
  const signed: unknown = await response.json();
  return { authorization: `Bearer ${String(memberOf(signed, 'token'))}` };
}

/** A request that has begun and does not come to its end. */
async function openSlowRequest(service: Spawned): Promise<Socket> {
  const { hostname, port } = new URL(service.base);
  const socket = connect(Number(port), hostname);
  socket.on('error', () => undefined);
  await new Promise((resolve) => socket.once('connect', resolve));
  socket.write(
    'POST /api/v1/compute/lift HTTP/1.1\r\nhost: x\r\ncontent-type: application/json\r\ncontent-length: 500\r\n\r\n{',
  );
  return socket;
}

test('with a request that never ends open, SIGTERM ends the process with 0', async () => {
  const service = await start();
  const socket = await openSlowRequest(service);
  expect((await fetch(`${service.base}/health/ready`)).status).toBe(200);
  const { code } = await service.end('SIGTERM');
  expect(code).toBe(0);
  socket.destroy();
}, 120_000);

test('a live stream does not hold up the end, and Ctrl-C twice is as once', async () => {
  const service = await start();
  const authorization = await signIn(service);
  const calls = await fetch(`${service.base}/api/v1/calls`, { headers: authorization });
  const build = /"buildId":"([0-9a-f-]{36})"/.exec(await calls.text())?.[1] ?? '';
  const live = await fetch(`${service.base}/api/v1/builds/${build}/live`, { headers: authorization });
  expect(live.status).toBe(200);
  const body = live.text();
  const ended = service.end('SIGINT');
  service.child.kill('SIGINT');
  const { code } = await ended;
  expect(code).toBe(0);
  // A stream that was cut off, as what holds up the end is, could not be read to its end.
  expect(await body).toContain('retry:');
}, 120_000);

test('a request that waits for the database is answered, and meanwhile others are told 503', async () => {
  const service = await start();
  const authorization = await signIn(service);
  const calls = await fetch(`${service.base}/api/v1/calls`, { headers: authorization });
  const build = /"buildId":"([0-9a-f-]{36})"/.exec(await calls.text())?.[1] ?? '';
  const holder = new pg.Client({ connectionString: database.ownerUrl });
  await holder.connect();
  onTestFinished(() => holder.end());
  await holder.query('begin');
  await holder.query('select 1 from build where id = $1 for update', [build]);

  const write = fetch(`${service.base}/api/v1/builds/${build}/arms`, {
    method: 'POST',
    headers: { ...authorization, 'content-type': 'application/json' },
    body: JSON.stringify({ name: 'kept while ending' }),
  });
  const waits = `select 1 from pg_stat_activity where datname = current_database() and wait_event_type = 'Lock'`;
  await expect.poll(async () => (await database.asOwner(waits)).rowCount, { timeout: 30_000 }).toBe(1);

  // A connection that was open before: the first half of its request is there when the signal comes.
  const { hostname, port } = new URL(service.base);
  const early = connect(Number(port), hostname);
  let heard = '';
  early.on('data', (part: Buffer) => {
    heard += part.toString();
  });
  await new Promise((resolve) => early.once('connect', resolve));
  early.write('GET /health/ready HTTP/1.1\r\nhost: x\r\n');

  const ended = service.end('SIGTERM');
  await expect.poll(() => service.said(), { timeout: 30_000 }).toContain('SIGTERM: no new requests');
  early.write('\r\n');
  await expect.poll(() => heard, { timeout: 30_000 }).toContain('"draining"');
  expect(heard).toMatch(/^HTTP\/1\.1 503 /);
  await holder.query('rollback');
  const answer = await write;
  expect(answer.status).toBe(201);
  const { code } = await ended;
  expect(code).toBe(0);
  const { rows } = await database.asOwner(`select 1 from arm where name = 'kept while ending'`);
  expect(rows.length).toBe(1);
}, 120_000);

test('settings that can’t be used are told all at once, and the process ends with 1', async () => {
  const failed = spawnService({ PORT: 'many', LOG_LEVEL: 'loud', DATABASE_URL: 'mysql://x' });
  await expect(failed).rejects.toThrow(/ended \(1\).*PORT.*LOG_LEVEL/s);
}, 120_000);
