import { once } from 'node:events';
import { readFile, stat } from 'node:fs/promises';
import { createServer } from 'node:net';
import path from 'node:path';
import { expect, onTestFinished, test } from 'vitest';
import { startEmbedded } from '../../server/database/embedded/start-embedded.ts';
import { dataFolder, postmasterPid, query } from '../tools/embedded-bench.ts';

const quiet = () => undefined;

test('the password is random, kept to the service, and opens the server over SCRAM on the loopback only', async () => {
  const dataDir = await dataFolder();
  const said: string[] = [];
  const server = await startEmbedded({ dataDir, log: (message) => said.push(message) });
  const { password, hostname, port } = new URL(server.ownerUrl);
  expect(hostname).toBe('127.0.0.1');
  // 32 random bytes are 43 characters of base64url (RFC 4648, section 5).
  expect(password).toMatch(/^[\w-]{43}$/);
  expect((await stat(path.join(dataDir, 'owner-password'))).mode & 0o777).toBe(0o600);

  const log = await readFile(path.join(dataDir, 'postgres', 'server.log'), 'utf8');
  const arguments_ = await readFile(`/proc/${await postmasterPid(dataDir)}/cmdline`, 'utf8');
  expect(log).toContain('ready to accept connections');
  for (const text of [log, arguments_, ...said]) expect(text).not.toContain(password);

  const guess = server.ownerUrl.replace(password, 'password');
  await expect(query(guess, 'SELECT 1')).rejects.toMatchObject({ code: '28P01' });
  const rules = await query(server.ownerUrl, 'SELECT DISTINCT auth_method FROM pg_hba_file_rules');
  expect(rules).toEqual([['scram-sha-256']]);

  // Port in hexadecimal, state 0A is LISTEN (proc(5)): the loopback address and no other.
  const listening = (await readFile('/proc/net/tcp', 'utf8'))
    .split('\n')
    .map((line) => line.trim().split(/\s+/))
    .filter(([, local, , state]) => state === '0A' && local?.endsWith(`:${hexadecimal(port)}`));
  expect(listening.map(([, local]) => local)).toEqual([`0100007F:${hexadecimal(port)}`]);
  await server.stop();
}, 40_000);

test('nothing that keeps acknowledged readings is turned down, and the port is kept unless a stranger took it', async () => {
  const dataDir = await dataFolder();
  const first = await startEmbedded({ dataDir, log: quiet });
  // The defaults of the PostgreSQL 18 manual, sections 19.5.1 and 28.2 (data checksums: on since 18).
  const settings = ['fsync', 'synchronous_commit', 'full_page_writes', 'data_checksums'];
  for (const setting of settings) expect(await query(first.ownerUrl, `SHOW ${setting}`)).toEqual([['on']]);
  const shape = `SELECT pg_encoding_to_char(encoding), datlocprovider::text, datlocale FROM pg_database
    WHERE datname = 'benchcall'`;
  expect(await query(first.ownerUrl, shape)).toEqual([['UTF8', 'b', 'C.UTF-8']]);
  await first.stop();
  const second = await startEmbedded({ dataDir, log: quiet });
  expect(second.ownerUrl).toBe(first.ownerUrl);
  await second.stop();

  const taken = Number(new URL(first.ownerUrl).port);
  const stranger = createServer().listen(taken, '127.0.0.1');
  await once(stranger, 'listening');
  onTestFinished(() => {
    stranger.close();
  });
  const third = await startEmbedded({ dataDir, log: quiet });
  expect(Number(new URL(third.ownerUrl).port)).not.toBe(taken);
  expect(await query(third.ownerUrl, 'SELECT 1')).toEqual([[1]]);
  await third.stop();
}, 40_000);

function hexadecimal(port: string): string {
  return Number(port).toString(16).toUpperCase().padStart(4, '0');
}
