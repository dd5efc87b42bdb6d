import { request } from 'node:http';
import { brotliDecompressSync, gunzipSync, gzipSync } from 'node:zlib';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { acceptsCoding } from '../../server/web/pages/accepted-coding.ts';
import { liveCall } from '../tools/live-call.ts';
import { type TestService, testService } from '../tools/service.ts';

/** What a ratio step may weigh over a telephone's line: page, style sheet and script, compressed. */
const MOST = 60 * 1024;

let service: TestService;
let base: string;
let page: string;
beforeAll(async () => {
  service = await testService();
  base = await service.listen();
  const call = await liveCall(service);
  for (let pass = 0; pass < 3; pass += 1) await call.keep();
  const answer = await service.request({ url: '/bench/steps/ratio', headers: call.bench });
  page = answer.body;
});
afterAll(() => service.close());

/** The bytes as they go over the line. */
function fetched(path: string, accept?: string): Promise<{ coding: string; vary: string; body: Buffer }> {
  return new Promise((resolve, reject) => {
    const headers = accept === undefined ? {} : { 'accept-encoding': accept };
    request(base + path, { headers, agent: false }, (answer) => {
      const parts: Buffer[] = [];
      answer.on('data', (part: Buffer) => parts.push(part));
      answer.on('end', () =>
        resolve({
          coding: answer.headers['content-encoding'] ?? '',
          vary: answer.headers.vary ?? '',
          body: Buffer.concat(parts),
        }),
      );
    })
      .on('error', reject)
      .end();
  });
}

describe('the ratio step at the engine', () => {
  it.each(['br', 'gzip'])('weighs less than 60 KB with its style sheet and script as %s', async (coding) => {
    const { style, script } = service.deps.assets;
    const files = await Promise.all([style, script].map((asset) => fetched(asset.href, coding)));
    expect(files.map((file) => file.coding)).toEqual([coding, coding]);
    const [css = 0, js = 0] = files.map((file) => file.body.length);
    const html = gzipSync(page).length;
    expect(html).toBeGreaterThan(1000);
    expect(html + css + js).toBeLessThan(MOST);
  });
});

describe('style sheet and script', () => {
  it('are the same bytes in every coding', async () => {
    for (const asset of [service.deps.assets.style, service.deps.assets.script]) {
      const bare = await fetched(asset.href);
      expect(bare.coding).toBe('');
      expect(bare.vary).toBe('accept-encoding');
      expect(brotliDecompressSync((await fetched(asset.href, 'gzip, br')).body).equals(bare.body)).toBe(true);
      expect(gunzipSync((await fetched(asset.href, 'gzip')).body).equals(bare.body)).toBe(true);
    }
  });
});

// RFC 9110, section 12.5.3.
describe('Accept-Encoding', () => {
  it.each([
    [undefined, false],
    ['', false],
    ['br', true],
    ['gzip, deflate, br;q=0.8', true],
    ['gzip;q=1.0, br;q=0', false],
    ['*', true],
    ['*;q=0', false],
    ['gzip, *;q=0', false],
    ['identity;q=0.5, BR', true],
  ])('%s takes br: %s', (header, takes) => {
    expect(acceptsCoding(header, 'br')).toBe(takes);
  });
});
