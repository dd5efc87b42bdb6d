import type { BrowserContext, Page } from 'playwright-core';
import sharp from 'sharp';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { axeFaults } from '../tools/axe.ts';
import { type TestBrowser, testBrowser } from '../tools/browser.ts';
import { type LiveCall, liveCall } from '../tools/live-call.ts';
import { inTheDark, lowTargets, spill } from '../tools/looks.ts';
import { type TestService, testService } from '../tools/service.ts';
import { tellsToTurn } from '../tools/tells-to-turn.ts';
import { type WeakLine, weakLine } from '../tools/weak-line.ts';

/**
 * The builder's phone where the signal comes and goes, with a real line that breaks. What must come of it is said by
 * no standard: an entry is kept once, in the order it was made in, or is still in front of whoever made it.
 */
const READING = 'input[name=peak]';
const PHONE = { width: 360, height: 740 };

let browser: TestBrowser;
let service: TestService;
let line: WeakLine;
let call: LiveCall;
let phone: BrowserContext;
let bench: Page;

beforeAll(async () => {
  browser = await testBrowser();
  service = await testService();
  line = await weakLine(await service.listen());
});
afterAll(async () => {
  await browser?.close();
  await line?.close();
  await service.close();
});

/** The readings of the build as the record has them, as they were typed. */
async function readings(): Promise<string[]> {
  const { rows } = await service.database.asOwner(
    'select typed from reading where build_id = $1 order by seq',
    [call.buildId],
  );
  return rows.map((row) => String(row.typed));
}

async function open(path = '/bench/steps/ratio'): Promise<Page> {
  const page = await phone.newPage();
  page.setDefaultTimeout(15_000);
  await page.goto(`${line.base}${path}`);
  return page;
}

/** On a machine with much to do a page and its worker need more than the moment that is usual. */
const soon = <T>(read: () => T) => expect.poll(read, { timeout: 20_000 });

const title = (page: Page) => page.locator('.unsent-title');
const entries = (page: Page) => page.locator('.unsent-entry');

async function enter(page: Page, peak: string): Promise<void> {
  await page.fill(READING, peak);
  await page.getByRole('button', { name: 'Save reading' }).click();
}

/** Enters a reading that stays on the phone. */
async function enterInVain(page: Page, peak: string, all: number): Promise<void> {
  await enter(page, peak);
  await soon(() => title(page).textContent()).toContain(`${all} not sent yet.`);
  await soon(() => page.inputValue(READING)).toBe('');
}

/** The steps of the link that are on the phone. */
const kept = (page: Page) =>
  page.evaluate(async () => {
    const names = (await caches.keys()).filter((name) => name.startsWith('pages '));
    const lists = await Promise.all(names.map(async (name) => (await caches.open(name)).keys()));
    return lists.flat().map((request) => new URL(request.url).pathname);
  });

beforeEach(async () => {
  line.set('up');
  call = await liveCall(service);
  phone = await browser.newContext({ viewport: PHONE });
  const [name = '', value = ''] = call.bench.cookie.split('=');
  await phone.addCookies([{ name, value, url: line.base }]);
  bench = await open();
  await soon(() => kept(bench)).toContain('/bench/steps/ratio');
});
afterEach(() => phone.close());

it('six readings, entered while the line fails in three ways, are kept once each and in order', async () => {
  line.set('answer lost');
  await enterInVain(bench, '.561', 1);
  expect(await readings()).toEqual(['.561']);
  expect(await entries(bench).first().textContent()).toContain('no answer yet, may have arrived');
  line.set('cut');
  await enterInVain(bench, '.562', 2);
  line.set('down');
  await bench.reload();
  await enterInVain(bench, '.563', 3);
  await enterInVain(bench, 'about nine', 4);
  await phone.setOffline(true);
  await enterInVain(bench, '.564', 5);
  await enterInVain(bench, '.565', 6);
  await enterInVain(bench, '.566', 7);
  expect(await bench.locator('.tape-unsent').count()).toBe(7);
  await bench.close();
  await phone.setOffline(false);
  line.set('up');
  // Two pages at once: only one of them sends.
  const [one, other] = await Promise.all([open(), open('/bench/steps/cam')]);
  const all = ['.561', '.562', '.563', '.564', '.565', '.566'];
  await soon(readings).toEqual(all);
  for (const page of [one, other]) await soon(() => title(page).textContent()).toBe('1 was not taken.');
  const refused = entries(one).first();
  expect(await entries(one).count()).toBe(1);
  expect(await refused.locator('.unsent-typed').textContent()).toContain('about nine');
  expect(await refused.locator('.unsent-why').textContent()).toMatch(/^Reading at full lift .*\.$/);
  const desk = await browser.newContext();
  const [name = '', value = ''] = call.cookie.cookie.split('=');
  await desk.addCookies([{ name, value, url: line.base }]);
  const atDesk = await desk.newPage();
  await atDesk.goto(`${line.base}/calls/${call.callId}/steps/ratio`);
  await one.reload();
  for (const page of [atDesk, one]) {
    const tape = (await page.locator('.tape-line:not(.tape-unsent)').allTextContents()).join(' ');
    expect(tape.match(/\.56\d in/g)).toEqual(all.map((typed) => `${typed} in`));
  }
  await desk.close();
});

describe('without a signal', () => {
  beforeEach(async () => {
    await soon(() => kept(bench)).toContain('/bench/steps/notes');
    line.set('down');
    await soon(() => title(bench).textContent()).toBe('No signal.');
  });

  it('a step that was never opened opens, says from when it is, and can be entered into', async () => {
    await bench.goto(`${line.base}/bench/steps/notes`);
    await soon(() => title(bench).textContent()).toBe('No signal.');
    expect(await bench.locator('.unsent-hint').textContent()).toMatch(/This page is from \d\d:\d\d\.$/);
    await bench.goto(`${line.base}/bench`);
    expect(new URL(bench.url()).pathname).toBe('/bench/steps/notes');
    await bench.goto(`${line.base}/bench/report`);
    await bench.getByText('This page is not on the phone yet').waitFor();
  });

  it('the line and the list are in the upper half of the first screen, and meet the access rules', async () => {
    await enterInVain(bench, '.561', 1);
    await enterInVain(bench, '.562', 2);
    expect(await title(bench).textContent()).toBe('No signal. 2 not sent yet.');
    const list = await bench.locator('.unsent').boundingBox();
    expect(list?.y).toBeGreaterThan(0);
    expect((list?.y ?? 0) + (list?.height ?? PHONE.height)).toBeLessThan(PHONE.height / 2);
    expect(await axeFaults(bench)).toEqual([]);
    expect(await inTheDark(bench)).toEqual([]);
    expect(await spill(bench)).toEqual([]);
    expect(await lowTargets(bench, '.unsent button:visible')).toEqual([]);
  });

  it('a stop that was said stops every page of this phone at once, and goes out before all else', async () => {
    await enterInVain(bench, '.561', 1);
    await bench.getByText('Say stop').click();
    await bench.fill('input[name=reason]', 'It binds at the top');
    await bench.getByRole('button', { name: 'Stop: nobody turns it' }).click();
    const box = bench.locator('.own-stop:not(.known-stop)');
    await box.waitFor();
    expect(await box.textContent()).toContain('You said stop: “It binds at the top”');
    expect(await box.textContent()).toMatch(/The desk has not heard this yet: phone them/);
    await soon(() => entries(bench).count()).toBe(2);
    for (const step of ['ratio', 'notes']) {
      await bench.goto(`${line.base}/bench/steps/${step}`);
      await box.waitFor();
      const [shown = ''] = await bench.locator('body').allInnerTexts();
      expect(shown.split('\n').flatMap(tellsToTurn)).toEqual([]);
      expect(await bench.locator('.bar-next:visible, .bar-answer:visible').count()).toBe(0);
    }
    expect(await bench.locator('form#note').isVisible()).toBe(true);
    expect(await axeFaults(bench)).toEqual([]);
    expect(await spill(bench)).toEqual([]);
    line.set('up');
    await bench.reload();
    await soon(() => box.isVisible()).toBe(false);
    await soon(() => bench.locator('main .hold').isVisible()).toBe(true);
    // Read before the stop or after it: nobody can see that from here, so it waits for the desk.
    await soon(() => title(bench).textContent()).toBe('1 was not taken.');
    expect(await readings()).toEqual([]);
  });

  it('what waits can be changed and deleted, and goes out as it then is', async () => {
    await enterInVain(bench, '.561', 1);
    await enterInVain(bench, '.562', 2);
    await enterInVain(bench, '.563', 3);
    await bench.goto(`${line.base}/bench/steps/cam`);
    await entries(bench).first().getByRole('button', { name: 'Change' }).click();
    await soon(() => bench.locator(READING).inputValue()).toBe('.561');
    await soon(() => entries(bench).first().textContent()).toContain('held back while you change it');
    // Left and opened again it waits as it was, in its place; so it does where the change is called off.
    await bench.reload();
    const first = entries(bench).first();
    await soon(() => first.textContent()).toMatch(/not sent yet|may have arrived/);
    await first.getByRole('button', { name: 'Change' }).click();
    await soon(() => bench.inputValue(READING)).toBe('.561');
    await first.getByRole('button', { name: 'Send as it was' }).click();
    await soon(() => bench.inputValue(READING)).toBe('');
    await soon(() => first.textContent()).toMatch(/not sent yet|may have arrived/);
    await first.getByRole('button', { name: 'Change' }).click();
    await soon(() => bench.inputValue(READING)).toBe('.561');
    await enterInVain(bench, '.571', 3);
    const second = entries(bench).nth(1);
    await second.getByRole('button', { name: 'Delete' }).click();
    await second.getByRole('button', { name: 'Delete for good' }).click();
    await soon(() => entries(bench).count()).toBe(2);
    line.set('up');
    await bench.reload();
    await soon(readings).toEqual(['.571', '.563']);
    await soon(() => bench.locator('.unsent').isVisible()).toBe(false);
  });
});

it('words that were changed after they did arrive are refused: nothing is kept twice', async () => {
  line.set('answer lost');
  await enterInVain(bench, '.561', 1);
  line.set('down');
  await bench.reload();
  await entries(bench).getByRole('button', { name: 'Change' }).click();
  await soon(() => bench.inputValue(READING)).toBe('.561');
  await enterInVain(bench, '.571', 1);
  line.set('up');
  await bench.reload();
  await soon(() => entries(bench).locator('.unsent-why').textContent()).toContain('It did arrive');
  expect(await readings()).toEqual(['.561']);
});

it('when the link has ended its pages are gone, and what was not sent can be taken along', async () => {
  line.set('down');
  await bench.reload();
  await enterInVain(bench, '.561', 1);
  const ended = await service.app.inject({
    method: 'DELETE',
    url: `/api/v1/calls/${call.callId}/share-links/${call.linkId}`,
    headers: call.desk.bearer,
  });
  expect(ended.statusCode).toBe(200);
  line.set('up');
  await bench.reload();
  await soon(() => title(bench).textContent()).toBe('This link has ended. 1 may have arrived.');
  await soon(() => kept(bench)).toEqual([]);
  await phone.grantPermissions(['clipboard-read', 'clipboard-write']);
  await bench.getByRole('button', { name: 'Copy the words' }).click();
  await bench.getByText('Copied.').waitFor();
  expect(await bench.evaluate(() => navigator.clipboard.readText())).toMatch(
    /^\d\d:\d\d Lobe lift 1 intake, pass 1: Reading at full lift: \.561$/,
  );
  await bench.getByRole('button', { name: 'Delete' }).click();
  await bench.getByRole('button', { name: 'Delete for good' }).click();
  await soon(() => entries(bench).count()).toBe(0);
});

it('what was typed under one link goes into no other', async () => {
  line.set('down');
  await bench.reload();
  await enterInVain(bench, '.561', 1);
  const first = call;
  call = await liveCall(service);
  const [name = '', value = ''] = call.bench.cookie.split('=');
  await phone.addCookies([{ name, value, url: line.base }]);
  line.set('up');
  await bench.reload();
  await soon(() => title(bench).textContent()).toBe('1 of another link not sent.');
  await enter(bench, '.581');
  await soon(readings).toEqual(['.581']);
  call = first;
  expect(await readings()).toEqual([]);
});

it('the worker sends what waits when the browser wakes it, with no page of ours open', async () => {
  line.set('down');
  await bench.reload();
  await enterInVain(bench, '.561', 1);
  const other = await phone.newPage();
  await bench.close();
  const devtools = await phone.newCDPSession(other);
  const registered = new Promise<string>((found) => {
    devtools.on('ServiceWorker.workerRegistrationUpdated', ({ registrations }) => {
      const ours = registrations.find(({ scopeURL }) => scopeURL.startsWith(line.base));
      if (ours !== undefined) found(ours.registrationId);
    });
  });
  await devtools.send('ServiceWorker.enable');
  line.set('up');
  await devtools.send('ServiceWorker.dispatchSyncEvent', {
    origin: line.base,
    registrationId: await registered,
    tag: 'send',
    lastChance: false,
  });
  await soon(readings).toEqual(['.561']);
});

it('over plain http, where a browser has no worker and no locks, an entry waits all the same', async () => {
  const { port } = new URL(line.base);
  const base = `http://bench.test:${port}`;
  const [name = '', value = ''] = call.bench.cookie.split('=');
  await phone.addCookies([{ name, value, url: base }]);
  await bench.goto(`${base}/bench/steps/ratio`);
  expect(await bench.evaluate(() => [isSecureContext, 'locks' in navigator])).toEqual([false, false]);
  line.set('cut');
  await enterInVain(bench, '.561', 1);
  await enterInVain(bench, '.562', 2);
  line.set('up');
  await bench.reload();
  await soon(readings).toEqual(['.561', '.562']);
});

it('a picture that does not go through stays chosen, and goes once when it is pressed again', async () => {
  const image = await sharp({ create: { width: 60, height: 40, channels: 3, background: '#456' } }).jpeg();
  await bench.goto(`${line.base}/bench/photographs`);
  const buffer = await image.toBuffer();
  await bench.locator('input[type=file]').setInputFiles({ name: 'tip.jpg', mimeType: 'image/jpeg', buffer });
  line.set('answer lost');
  const press = () => bench.locator('form[enctype] button').click();
  await press();
  await bench.getByText('The picture is still chosen here').waitFor();
  line.set('up');
  await press();
  await soon(() => bench.locator('.photograph').count()).toBe(1);
});
