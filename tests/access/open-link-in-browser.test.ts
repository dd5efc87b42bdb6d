import { afterAll, beforeAll, expect, test } from 'vitest';
import { type TestBrowser, testBrowser } from '../tools/browser.ts';
import { openCall, sendJson } from '../tools/call.ts';
import { type TestService, testService } from '../tools/service.ts';

/**
 * A builder opens the link in a real browser over plain http, as on a bench's own network. There it
 * sends no Sec-Fetch-Site, and because of the page's no-referrer policy its form says Origin: null.
 */
let service: TestService;
let browser: TestBrowser;
let base: string;
let path: string;

beforeAll(async () => {
  service = await testService();
  const person = await service.person();
  const { callId } = await openCall(service, person, 'On the bench');
  const made = await sendJson(service, person.bearer, 'POST', `/api/v1/calls/${callId}/share-links`, {});
  path = String(made.json.path);
  // A name, because a browser trusts loopback addresses as it trusts https.
  base = (await service.listen()).replace('127.0.0.1', 'bench.test');
  browser = await testBrowser();
});
afterAll(async () => {
  await browser.close();
  await service.close();
});

test.each([true, false])(
  'with scripts %s the link leads to the build and out of the address',
  async (javaScriptEnabled) => {
    const context = await browser.newContext({ javaScriptEnabled });
    const page = await context.newPage();
    const sent: Promise<Record<string, string>>[] = [];
    page.on('request', (request) => {
      if (request.method() === 'POST') sent.push(request.allHeaders());
    });
    await page.goto(`${base}${path}`);
    await page.getByRole('button', { name: 'Open my build' }).click();
    await page.waitForURL(/\/bench/);
    expect(page.url()).not.toContain('bcl_');
    // Otherwise this test would not try what it is for.
    const headers = await sent[0];
    expect(headers?.origin).toBe('null');
    expect(headers?.['sec-fetch-site']).toBeUndefined();
    expect(headers?.referer).toBeUndefined();
    expect(await page.evaluate('document.referrer').catch(() => '')).toBe('');
    await context.close();
  },
);

test('a form on another site that posts the same link opens nothing', async () => {
  const context = await browser.newContext();
  const page = await context.newPage();
  await page.route('http://elsewhere.test/**', (route) =>
    route.fulfill({
      contentType: 'text/html',
      headers: { 'referrer-policy': 'no-referrer' },
      body: `<form method="post" action="${base}${path}"><button>Go</button></form>`,
    }),
  );
  await page.goto(`${base}${path}`);
  await page.goto('http://elsewhere.test/');
  const answered = page.waitForResponse((response) => response.request().method() === 'POST');
  await page.getByRole('button').click();
  expect((await answered).status()).toBe(403);
  const names = (await context.cookies(base)).map((cookie) => cookie.name);
  expect(names).not.toContain('benchcall-bench');
  await context.close();
});
