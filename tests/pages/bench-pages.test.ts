import sharp from 'sharp';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { z } from 'zod';
import { headlineOf, hintOf, type Standing } from '../../views/assets/unsent/headline.ts';
import { type LiveCall, liveCall } from '../tools/live-call.ts';
import { type TestService, testService } from '../tools/service.ts';

let service: TestService;
let call: LiveCall;
beforeAll(async () => {
  service = await testService();
  call = await liveCall(service);
});
afterAll(() => service.close());

const rootOf = (html: string) => /<html [^>]*>/.exec(html)?.[0] ?? '';

/** Members and their values are of the W3C's Web Application Manifest. */
const manifestSchema = z.strictObject({
  id: z.literal('/bench'),
  name: z.string().min(1),
  short_name: z.string().max(12),
  description: z.string(),
  lang: z.literal('en'),
  dir: z.literal('ltr'),
  start_url: z.literal('/bench'),
  scope: z.literal('/bench'),
  display: z.literal('standalone'),
  background_color: z.string().regex(/^#[0-9a-f]{6}$/),
  theme_color: z.string().regex(/^#[0-9a-f]{6}$/),
  icons: z.array(
    z.strictObject({
      src: z.string(),
      sizes: z.string(),
      type: z.string(),
      purpose: z.enum(['any', 'maskable']),
    }),
  ),
});

describe('a page of the builder', () => {
  it('can be put on the screen of the phone, with a mark of the sizes that it says', async () => {
    const page = await service.request({ url: '/bench/steps/ratio', headers: call.bench });
    const href = /<link rel="manifest" href="([^"]+)">/.exec(page.body)?.[1] ?? '';
    const answer = await service.request({ url: href });
    expect(answer.headers['content-type']).toBe('application/manifest+json');
    const { icons, background_color } = manifestSchema.parse(JSON.parse(answer.body));
    const drawn = icons.filter(({ type }) => type === 'image/png');
    // 192 and 512 px: the sizes that the browsers ask for; common practice, from memory.
    expect([...new Set(drawn.map(({ sizes }) => sizes))]).toEqual(['192x192', '512x512']);
    expect(new Set(drawn.map(({ purpose }) => purpose))).toEqual(new Set(['any', 'maskable']));
    for (const { src, sizes } of drawn) {
      const picture = sharp((await service.request({ url: src })).rawPayload);
      const { width, height } = await picture.metadata();
      expect(`${width}x${height}`).toBe(sizes);
      // The ground goes to the edge, so that a phone may cut the icon to any shape.
      const { data } = await picture.removeAlpha().raw().toBuffer({ resolveWithObject: true });
      expect(`#${data.subarray(0, 3).toString('hex')}`).toBe(background_color);
    }
  });

  it('names its link and its worker, which may load nothing but what is here', async () => {
    const page = await service.request({ url: '/bench/steps/ratio', headers: call.bench });
    const root = rootOf(page.body);
    expect(root).toContain(`data-link="${call.linkId}"`);
    expect(root).toContain('data-bench="open"');
    const worker = await service.request({ url: /data-worker="([^"]+)"/.exec(root)?.[1] ?? '' });
    expect(worker.headers['content-type']).toMatch(/^text\/javascript/);
    expect(worker.headers['content-security-policy']).toBe("default-src 'none'; connect-src 'self'");
    expect(worker.headers['cache-control']).toBe('no-cache');
    const { style, script, icon } = service.deps.assets;
    for (const { href } of [style, script, icon]) expect(worker.body).toContain(href);
  });

  it('says so where its link has ended', async () => {
    const cookie = `benchcall-bench=bcb_${'x'.repeat(43)}`;
    const page = await service.request({ url: '/bench/steps/ratio', headers: { cookie } });
    expect(page.statusCode).toBe(401);
    expect(rootOf(page.body)).toContain('data-bench="ended"');
    expect(rootOf(page.body)).not.toContain('data-link');
  });

  it('alone has any of this: a page of the desk has none', async () => {
    const page = await service.request({ url: `/calls/${call.callId}/steps/ratio`, headers: call.cookie });
    expect(page.statusCode).toBe(200);
    expect(page.body).not.toMatch(/data-bench|data-worker|rel="manifest"|unsent/);
  });
});

describe('the line at the top of the page', () => {
  const usual: Standing = {
    signal: true,
    state: 'open',
    sending: false,
    waiting: 0,
    refused: 0,
    arrived: 0,
    ofOthers: 0,
    ofBuild: 0,
    tried: 0,
  };
  it.each<[Partial<Standing>, string]>([
    [{}, ''],
    [{ signal: false }, 'No signal.'],
    [{ signal: false, waiting: 2 }, 'No signal. 2 not sent yet.'],
    [{ signal: false, waiting: 1, sending: true }, 'No signal. 1 not sent yet.'],
    [{ waiting: 2, sending: true }, 'Sending 2.'],
    [{ waiting: 2 }, '2 not sent yet.'],
    [{ refused: 1 }, '1 was not taken.'],
    [{ refused: 2, waiting: 1 }, '1 not sent yet. 2 were not taken.'],
    [{ ofOthers: 3 }, '3 of another link not sent.'],
    [{ state: 'ended' }, 'This link has ended.'],
    [{ state: 'ended', signal: false }, 'This link has ended.'],
    [{ state: 'ended', waiting: 1, refused: 1 }, 'This link has ended. 2 not sent.'],
    [{ state: 'ended', waiting: 2, tried: 1 }, 'This link has ended. 1 not sent. 1 may have arrived.'],
    [{ state: 'ended', waiting: 1, tried: 1 }, 'This link has ended. 1 may have arrived.'],
    [{ state: 'closed' }, ''],
    [{ state: 'closed', waiting: 2 }, '2 not sent yet.'],
  ])('%j: %s', (part, said) => {
    expect(headlineOf({ ...usual, ...part })).toBe(said);
  });

  it('never says that nothing was kept of an entry that had arrived', () => {
    expect(hintOf({ ...usual, refused: 1 })).toContain('Nothing of these was kept');
    for (const refused of [1, 2]) expect(hintOf({ ...usual, refused, arrived: 1 })).not.toContain('Nothing');
  });

  it('is followed by a hint wherever something waits for the person or the signal', () => {
    expect(hintOf(usual)).toBe('');
    const parts: Partial<Standing>[] = [
      { signal: false },
      { signal: false, waiting: 1 },
      { refused: 1 },
      { ofOthers: 1 },
      { state: 'ended' },
      { state: 'closed', waiting: 1 },
    ];
    for (const part of parts) expect(hintOf({ ...usual, ...part })).toMatch(/\.$/);
  });
});
