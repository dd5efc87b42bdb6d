import type { BrowserContext, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { type TestBrowser, testBrowser } from '../tools/browser.ts';
import { sendJson } from '../tools/call.ts';
import { BUILDER, type LiveCall, liveCall } from '../tools/live-call.ts';
import { type TestService, testService } from '../tools/service.ts';

const DESK = 'Robin at the desk';
const READING = 'input[name=peak]';

let browser: TestBrowser;
let service: TestService;
/** The desk is on one process of the service, the builder on another. */
let deskAt: string;
let benchAt: string;
let call: LiveCall;
let desk: Page;
let bench: Page;
let contexts: BrowserContext[] = [];

beforeAll(async () => {
  browser = await testBrowser();
  service = await testService();
  deskAt = await service.listen();
  benchAt = await (await service.secondProcess()).listen();
});
afterAll(async () => {
  await browser?.close();
  await service.close();
});

async function look(url: string, cookie: string, width: number, scripts = true): Promise<Page> {
  const context = await browser.newContext({ viewport: { width, height: 800 }, javaScriptEnabled: scripts });
  contexts.push(context);
  const [name = '', value = ''] = cookie.split('=');
  await context.addCookies([{ name, value, url: new URL(url).origin }]);
  const page = await context.newPage();
  page.setDefaultTimeout(10_000);
  await page.goto(url);
  return page;
}

beforeEach(async () => {
  call = await liveCall(service, DESK);
  desk = await look(`${deskAt}/calls/${call.callId}/steps/ratio`, call.cookie.cookie, 1280);
  bench = await look(`${benchAt}/bench/steps/ratio`, call.bench.cookie, 360);
  // Each sees the other: both streams are open.
  await desk.getByText(`${BUILDER}, at the engine, is here`).waitFor();
  await bench.getByText(`${DESK}, at the desk, is here`).waitFor();
});
afterEach(async () => {
  for (const context of contexts) await context.close();
  contexts = [];
});

const line = (page: Page, seq: number) => page.locator(`#line-${seq}`);

/** A page that is loaded again forgets this. */
const mark = (page: Page) => page.evaluate(() => document.body.setAttribute('data-same', 'yes'));
const isSame = (page: Page) => page.evaluate(() => document.body.getAttribute('data-same') === 'yes');

async function enter(page: Page, peak: string): Promise<void> {
  await page.fill(READING, peak);
  await page.getByRole('button', { name: 'Save reading' }).click();
}

describe('an entry', () => {
  it('of the desk is seen at the engine, with who made it, without a reload', async () => {
    await mark(bench);
    const seq = (await call.newest()) + 1;
    await enter(desk, '.566');
    await line(desk, seq).waitFor({ state: 'attached' });
    await line(bench, seq).waitFor({ state: 'attached' });
    expect(await line(bench, seq).textContent()).toContain(DESK);
    expect(await bench.locator('#status').textContent()).toContain(`${DESK}: `);
    expect(await isSame(bench)).toBe(true);
    // One's own entry is nothing to be told of.
    expect(await desk.locator('#status').textContent()).toBe('');
  });

  it('of the builder is seen at the desk, with who made it, without a reload', async () => {
    await mark(desk);
    const seq = (await call.newest()) + 1;
    await enter(bench, '.566');
    await line(bench, seq).waitFor({ state: 'attached' });
    await line(desk, seq).waitFor({ state: 'visible' });
    expect(await line(desk, seq).textContent()).toContain(BUILDER);
    expect(await line(desk, seq).textContent()).toContain('.566');
    expect(await isSame(desk)).toBe(true);
  });

  it('leaves the page as a reload shows it', async () => {
    const seq = await call.newest();
    await enter(bench, '.566');
    await line(desk, seq + 1).waitFor({ state: 'attached' });
    await desk.locator('#status').filter({ hasText: BUILDER }).waitFor();
    const main = () =>
      desk.evaluate(() => {
        const copy = document.createElement('div');
        copy.innerHTML = document.querySelector('main')?.innerHTML ?? '';
        for (const each of copy.querySelectorAll('[data-presence], input[name=key]')) each.remove();
        for (const each of copy.querySelectorAll('.is-fresh')) each.classList.remove('is-fresh');
        // Where a pane begins on the screen goes by how far the page is scrolled.
        for (const each of copy.querySelectorAll('[style*="--begins"]')) each.removeAttribute('style');
        // A merge may leave the attributes of an element in another order.
        for (const each of copy.querySelectorAll('*')) {
          const all = [...each.attributes].map(({ name, value }) => ({ name, value }));
          for (const { name } of all) each.removeAttribute(name);
          for (const { name, value } of all.toSorted((a, b) => a.name.localeCompare(b.name)))
            each.setAttribute(name, value);
        }
        return copy.innerHTML.replace(/\s+/g, ' ').split(/(?=<)/);
      });
    const merged = await main();
    await desk.reload();
    expect(merged).toEqual(await main());
  });
});

describe('what somebody has begun', () => {
  it('a half-typed reading and its caret stay while entries arrive', async () => {
    const seq = await call.newest();
    await desk.focus(READING);
    await desk.keyboard.type('5 turns 6');
    await desk.keyboard.press('ArrowLeft');
    await desk.keyboard.press('ArrowLeft');
    await enter(bench, '.566');
    await line(desk, seq + 1).waitFor({ state: 'attached' });
    await call.keep();
    await line(desk, seq + 2).waitFor({ state: 'attached' });
    expect(
      await desk.evaluate(() => {
        const field = document.activeElement;
        return field instanceof HTMLInputElement ? [field.name, field.value, field.selectionStart] : [];
      }),
    ).toEqual(['peak', '5 turns 6', 7]);
    await desk.keyboard.type('4');
    expect(await desk.inputValue(READING)).toBe('5 turns4 6');
  });

  it('a field that has the focus and is empty keeps it', async () => {
    const seq = await call.newest();
    await bench.focus(READING);
    await call.keep();
    await line(bench, seq + 1).waitFor({ state: 'attached' });
    expect(await bench.evaluate(() => document.activeElement?.getAttribute('name'))).toBe('peak');
    await bench.keyboard.type('.566');
    expect(await bench.inputValue(READING)).toBe('.566');
  });

  it('an entry that was refused stays as typed while the tape goes on', async () => {
    const seq = await call.newest();
    await enter(desk, 'five and a bit');
    await desk.locator('.error-summary').waitFor();
    await desk.getByText(`${BUILDER}, at the engine, is here`).waitFor();
    await enter(bench, '.566');
    await line(desk, seq + 1).waitFor({ state: 'attached' });
    expect(await desk.inputValue(READING)).toBe('five and a bit');
    expect(await desk.locator('.error-summary').isVisible()).toBe(true);
  });

  it('what is open stays open and what is closed stays closed', async () => {
    const seq = await call.newest();
    const drawers = bench.locator('main details');
    const count = await drawers.count();
    expect(count).toBeGreaterThan(1);
    await bench.locator('details.tape-drawer', { hasText: 'Show the tape' }).locator('summary').click();
    const before = await drawers.evaluateAll((all) => all.map((each) => each.hasAttribute('open')));
    expect(before).toContain(true);
    await call.keep();
    await line(bench, seq + 1).waitFor({ state: 'visible' });
    expect(
      await bench.locator('details.tape-drawer', { hasText: 'Show the tape' }).getAttribute('open'),
    ).toBe('');
    expect(await bench.locator('#more').getAttribute('open')).toBeNull();
  });
});

describe('a stop that comes while somebody types', () => {
  const CORNER = 'main .hold, main form, main h1, main .bar-next, main .bar-answer';
  const PARTS: readonly (readonly [string, string])[] = [
    ['ratio', READING],
    ['timing', 'form#working input[type=text]'],
    ['sheet', 'form#valve input[type=text]'],
  ];

  it.each(PARTS)('stands before the entry of %s, on both sides, and takes no letter', async (step, field) => {
    await call.keep();
    for (const side of [bench, desk]) {
      await side.goto(side.url().replace(/steps\/.*/, `steps/${step}`));
      await side.locator(field).locator('visible=true').first().fill('5');
    }
    const reason = 'It binds near the top';
    await sendJson(service, call.desk.bearer, 'POST', `/api/v1/calls/${call.callId}/hold`, { reason });
    for (const side of [bench, desk]) {
      await side.locator('main .hold').waitFor();
      const order = await side.locator(CORNER).evaluateAll((all) =>
        all
          .filter((each) => each.checkVisibility() && each.closest('.call-top, .desk-missing') === null)
          .toSorted((a, b) => a.getBoundingClientRect().top - b.getBoundingClientRect().top)
          .map((each) => (each instanceof HTMLFormElement ? 'form' : each.tagName)),
      );
      expect(order[0]).toBe('SECTION');
      expect(order.indexOf('form')).toBe(order.length - order.filter((each) => each === 'form').length);
      const lowest = await side.locator('main .hold').evaluate((box) => box.getBoundingClientRect().bottom);
      expect(lowest).toBeLessThan(740);
      const typed = await side
        .locator(field)
        .evaluateAll((all) => all.map((each) => each instanceof HTMLInputElement && each.value));
      expect(typed).toContain('5');
    }
  });
});

describe('a line that is down', () => {
  it('is said, and the page catches up by itself when it is back', async () => {
    await mark(bench);
    const seq = await call.newest();
    await bench.fill(READING, '.5');
    await bench.context().setOffline(true);
    await bench.locator('.unsent-title').filter({ hasText: 'No signal.' }).waitFor();
    await call.keep();
    await call.keep();
    await bench.context().setOffline(false);
    await line(bench, seq + 2).waitFor({ state: 'attached' });
    await bench.locator('#status').filter({ hasText: 'The line is back' }).waitFor();
    await line(desk, seq + 2).waitFor({ state: 'attached' });
    expect(await bench.locator('.tape-line').count()).toBe(await desk.locator('.tape-line').count());
    expect(await bench.inputValue(READING)).toBe('.5');
    expect(await isSame(bench)).toBe(true);
  });

  it('is for good when the link is ended, and the page says so', async () => {
    const gone = await service.app.inject({
      method: 'DELETE',
      url: `/api/v1/calls/${call.callId}/share-links/${call.linkId}`,
      headers: call.desk.bearer,
    });
    expect(gone.statusCode).toBe(200);
    await bench.locator('.unsent-title', { hasText: 'This link has ended.' }).waitFor();
    expect(await bench.locator('.unsent-hint').textContent()).toContain('Nothing more is kept. Ask the desk');
    expect(await bench.locator('#status').textContent()).not.toContain('open to you');
    expect(await bench.locator(READING).isEditable()).toBe(false);
    expect(await bench.getByRole('button', { name: 'Save reading' }).isDisabled()).toBe(true);
  });
});

describe('who is here', () => {
  it('leads to the step that the other side looks at', async () => {
    await bench.goto(`${benchAt}/bench/steps/parts`);
    const link = desk.getByRole('link', { name: 'go to their step, Rocker arms' });
    await link.click();
    await desk.waitForURL(`**/calls/${call.callId}/steps/parts`);
    await desk.getByText(`${BUILDER}, at the engine, is here`).waitFor();
    expect(await desk.getByRole('link', { name: /go to their step/ }).count()).toBe(0);
  });

  it('ends when the other side leaves', async () => {
    await bench.context().close();
    await desk.getByText(`${BUILDER}, at the engine, is here`).waitFor({ state: 'detached' });
  });
});

it('with scripts off, the refresh link shows the same', async () => {
  const still = await look(`${benchAt}/bench/steps/ratio`, call.bench.cookie, 360, false);
  const seq = (await call.newest()) + 1;
  await enter(desk, '.566');
  await line(bench, seq).waitFor({ state: 'attached' });
  expect(await line(still, seq).count()).toBe(0);
  await still.locator('#more > summary').click();
  await still.getByRole('link', { name: 'Refresh' }).click();
  await line(still, seq).waitFor({ state: 'attached' });
  expect(await line(still, seq).textContent()).toBe(await line(bench, seq).textContent());
});
