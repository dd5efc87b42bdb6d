import { readFile } from 'node:fs/promises';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { readConfig } from '../../server/config/config.ts';
import { byAnotherApp } from '../tools/by-another-app.ts';
import { type TestService, testService } from '../tools/service.ts';

let made: TestService;
beforeAll(async () => {
  made = await testService();
});
afterAll(() => made.close());

/** The lines that a service with these proxies logs, asked several times by way of one. */
async function linesWith(proxies: string | undefined): Promise<string[]> {
  const lines: string[] = [];
  const config = readConfig({
    NODE_ENV: 'test',
    LOG_LEVEL: 'warn',
    ...(proxies === undefined ? {} : { TRUSTED_PROXIES: proxies }),
  });
  const log = { write: (line: string) => void lines.push(line) };
  const service = await byAnotherApp({ ...made, close: async () => undefined }, { config }, log);
  for (let time = 0; time < 3; time += 1)
    await service.request({ url: '/health/live', headers: { 'x-forwarded-for': '192.0.2.1' } });
  await service.close();
  return lines.filter((line) => line.includes('TRUSTED_PROXIES'));
}

describe('requests that were passed on by an address that nobody named', () => {
  test.each([
    ['without any', undefined],
    ['with another one', '192.0.2.200'],
  ])('%s: it is said once, with the address', async (_, proxies) => {
    const lines = await linesWith(proxies);
    expect(lines).toHaveLength(1);
    expect(lines[0]).toContain('127.0.0.1');
  });

  test('with that one nothing is said', async () => {
    expect(await linesWith('127.0.0.1')).toEqual([]);
  });
});

test('the compose file names the gateway of its own network, which has an address that stays', async () => {
  const text = await readFile(new URL('../../docker-compose.yml', import.meta.url), 'utf8');
  const trusted = /TRUSTED_PROXIES: (\S+)/.exec(text)?.[1] ?? '';
  expect(/gateway: (\S+)/.exec(text)?.[1]).toBe(trusted);
  expect(/subnet: (\S+)/.exec(text)?.[1]).toBe(`${trusted.replace(/\.\d+$/, '.0')}/24`);
  // Nobody else comes in by the port: it is open to the machine itself alone.
  expect(text).toContain('"127.0.0.1:3000:3000"');
  expect(readConfig({ TRUSTED_PROXIES: trusted }).TRUSTED_PROXIES).toBe(trusted);
});
