import type { BrowserContext, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, beforeEach, expect } from 'vitest';
import { type TestBrowser, testBrowser } from './browser.ts';
import { type LiveCall, liveCall } from './live-call.ts';
import { type TestService, testService } from './service.ts';
import { type WeakLine, weakLine } from './weak-line.ts';

/** The smallest phone that is looked after. */
export const PHONE = { width: 360, height: 740 };
/** The field of a reading, on the step that the link opens. */
export const READING = 'input[name=peak]';

/** On a machine with much to do a page and its worker need more than the moment that is usual. */
export const soon = <T>(read: () => T) => expect.poll(read, { timeout: 20_000 });

export const titleOf = (page: Page) => page.locator('.unsent-title');
export const entriesOf = (page: Page) => page.locator('.unsent-entry');

/** The steps of the link that are on the phone. */
export const keptPages = (page: Page): Promise<string[]> =>
  page.evaluate(async () => {
    const names = (await caches.keys()).filter((name) => name.startsWith('pages '));
    const lists = await Promise.all(names.map(async (name) => (await caches.open(name)).keys()));
    return lists.flat().map((request) => new URL(request.url).pathname);
  });

export async function enter(page: Page, peak: string): Promise<void> {
  await page.fill(READING, peak);
  await page.getByRole('button', { name: 'Save reading' }).click();
}

/** Enters a reading that stays on the phone, where so many wait with it. */
export async function enterInVain(page: Page, peak: string, all: number): Promise<void> {
  await enter(page, peak);
  await soon(() => titleOf(page).textContent()).toContain(`${all} not sent yet.`);
  await soon(() => page.inputValue(READING)).toBe('');
}

/** What is in sight, line by line: the text of the document has what is hidden too. */
export async function shownLines(page: Page): Promise<string[]> {
  const [shown = ''] = await page.locator('body').allInnerTexts();
  return shown.split('\n');
}

export interface WeakPhone {
  readonly browser: TestBrowser;
  readonly service: TestService;
  readonly line: WeakLine;
  readonly call: LiveCall;
  readonly phone: BrowserContext;
  readonly bench: Page;
  /** Opens a step of the link in its page. */
  step(name: string): Promise<void>;
  /** The line goes down, and the page knows it. */
  noSignal(): Promise<void>;
  /** The readings of a call as the record has them, as they were typed. */
  readings(call?: LiveCall): Promise<string[]>;
  /** What the desk does by a program. */
  desk(method: 'POST' | 'PUT' | 'DELETE', url: string, body?: object): Promise<Record<string, unknown>>;
}

/** A builder’s phone on a line that breaks, new for each test of a file, with the steps of its call kept. */
export function weakPhone(touch = false): WeakPhone {
  const here: {
    browser?: TestBrowser;
    service?: TestService;
    line?: WeakLine;
    call?: LiveCall;
    phone?: BrowserContext;
    bench?: Page;
  } = {};
  function got<T>(value: T | undefined): T {
    if (value === undefined) throw new Error('asked for before it was made');
    return value;
  }
  beforeAll(async () => {
    here.browser = await testBrowser();
    here.service = await testService();
    here.line = await weakLine(await here.service.listen());
  });
  afterAll(async () => {
    await here.browser?.close();
    await here.line?.close();
    await here.service?.close();
  });
  beforeEach(async () => {
    const line = got(here.line);
    line.set('up');
    here.call = await liveCall(got(here.service));
    const screen = { viewport: PHONE, ...(touch ? { hasTouch: true, isMobile: true } : {}) };
    here.phone = await got(here.browser).newContext(screen);
    const [name = '', value = ''] = here.call.bench.cookie.split('=');
    await here.phone.addCookies([{ name, value, url: line.base }]);
    here.bench = await here.phone.newPage();
    here.bench.setDefaultTimeout(15_000);
    await here.bench.goto(`${line.base}/bench/steps/ratio`);
    await soon(() => keptPages(got(here.bench))).toContain('/bench/steps/notes');
  });
  afterEach(() => here.phone?.close());
  return {
    get browser() {
      return got(here.browser);
    },
    get service() {
      return got(here.service);
    },
    get line() {
      return got(here.line);
    },
    get call() {
      return got(here.call);
    },
    get phone() {
      return got(here.phone);
    },
    get bench() {
      return got(here.bench);
    },
    async step(name) {
      await got(here.bench).goto(`${got(here.line).base}/bench/steps/${name}`);
    },
    async noSignal() {
      got(here.line).set('down');
      await soon(() => titleOf(got(here.bench)).textContent()).toContain('No signal.');
    },
    async readings({ buildId } = got(here.call)) {
      const { rows } = await got(here.service).database.asOwner(
        'select typed from reading where build_id = $1 order by seq',
        [buildId],
      );
      return rows.map((row) => String(row.typed));
    },
    async desk(method, url, body) {
      const headers = got(here.call).desk.bearer;
      const payload = body === undefined ? {} : { payload: body };
      const answer = await got(here.service).app.inject({ method, url, headers, ...payload });
      expect(answer.statusCode).toBeLessThan(300);
      const json: unknown = answer.json();
      return Object.fromEntries(Object.entries(Object(json)));
    },
  };
}
