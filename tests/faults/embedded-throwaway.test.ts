import { readdir } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { expect, test } from 'vitest';
import { query } from '../tools/embedded-bench.ts';
import { startThrowaway } from '../tools/throwaway-postgres.ts';

test('a throw-away server is the real one, and leaves nothing behind', async () => {
  const server = await startThrowaway();
  expect(await query(server.ownerUrl, 'SHOW fsync')).toEqual([['off']]);
  const mine = async () =>
    (await readdir(tmpdir())).filter((name) => name.startsWith(`benchcall-throwaway-${process.pid}-`));
  expect(await mine()).toHaveLength(1);
  await server.stop();
  expect(await mine()).toEqual([]);
  await expect(query(server.ownerUrl, 'SELECT 1')).rejects.toMatchObject({ code: 'ECONNREFUSED' });
}, 40_000);
