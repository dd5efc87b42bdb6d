import { mkdir } from 'node:fs/promises';
import type { BrowserContext, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, describe, expect, test } from 'vitest';
import { CALLS } from '../../calls/all.ts';
import type { Entry } from '../../calls/entry.ts';
import { openToPlay, type Playing, play } from '../../calls/play.ts';
import { type Said, saidIn } from '../../calls/said.ts';
import { type TestBrowser, testBrowser } from '../../tools/browser.ts';
import { sendJson } from '../../tools/call.ts';
import { type Person, type TestService, testService } from '../../tools/service.ts';
import { PHONE } from './two-sides.ts';

/*
 * Ten of the table's calls between two browsers: the builder's readings go in by the link, the rest by the desk. Both
 * look at the step of the answer while the last of it is entered, and are told it without a reload. With
 * CALL_PICTURES=folder both screens are also put there.
 */
const SAID = [
  'Stamped one six; five fifty-seven and a half, three times, on the light spring',
  'Five thirty-nine, and nobody said how the lash was',
  'Five fifty-seven light, five forty-one on the real spring',
  'One five to one six, springs are fine, right?',
  'Every two degrees from four to twenty after: least one twelve at twelve',
  'Fifteen read alike, five intake doesn’t',
  'Fourteen sixty to the tip, nine twelve to the cup',
  'There is glitter in the filter',
  'Overhead cam, buckets: point one four found, two ninety shim in it, point two wanted',
  'No indicator: five sixty by a steel rule',
] as const;

const LIVE_MS = 15_000;

let browser: TestBrowser;
let service: TestService;
let person: Person;
let base: string;
let contexts: BrowserContext[] = [];
beforeAll(async () => {
  browser = await testBrowser();
  service = await testService();
  person = await service.person({ name: 'Robin at the desk' });
  base = await service.listen();
});
afterEach(async () => {
  for (const context of contexts) await context.close();
  contexts = [];
});
afterAll(async () => {
  await browser?.close();
  await service.close();
});

/** What the builder enters by the link; the rest is the desk's. */
const isBuilders = ({ path }: Entry): boolean =>
  /^build\/(set-ups|sheet|lash|tip-marks|gap-scans|identification|answers)/.test(path);

async function look(path: string, cookie: string, options: object): Promise<Page> {
  const context = await browser.newContext(options);
  contexts.push(context);
  const [name = '', value = ''] = cookie.split('=');
  await context.addCookies([{ name, value, url: new URL(base).origin }]);
  const page = await context.newPage();
  page.setDefaultTimeout(LIVE_MS);
  await page.goto(`${base}${path}`);
  return page;
}

interface Link {
  readonly bearer: { readonly authorization: string };
  readonly cookie: string;
}

async function linkTo({ callId }: Playing): Promise<Link> {
  const shared = await sendJson(service, person.bearer, 'POST', `/api/v1/calls/${callId}/share-links`, {
    holder: 'Pat at the engine',
    days: 1,
  });
  const secret = String(shared.json.secret);
  const opened = await service.request({ method: 'POST', url: `/b/${secret}` });
  const bench = opened.cookies.find(({ name }) => name === 'benchcall-bench')?.value ?? '';
  return { bearer: { authorization: `Bearer ${secret}` }, cookie: `benchcall-bench=${bench}` };
}

const plain = (text: string): string => text.replaceAll(/\s+/g, ' ');

/** Of these the ones that the page does not hold. */
const notOn = (page: Page, sentences: readonly string[]): Promise<string[]> =>
  page.evaluate((wanted) => {
    const text = (document.body.textContent ?? '').replaceAll(/\s+/g, ' ');
    return wanted.filter((each) => !text.includes(each));
  }, sentences.map(plain));

/** The page comes to hold every sentence without being loaded again. */
async function comesToSay(page: Page, sentences: readonly string[]): Promise<void> {
  await expect.poll(() => notOn(page, sentences), { timeout: LIVE_MS }).toEqual([]);
  expect(await page.evaluate(() => document.body.dataset.same), 'it was loaded again').toBe('yes');
}

async function picture(page: Page, name: string): Promise<void> {
  const folder = process.env.CALL_PICTURES;
  if (folder === undefined) return;
  await mkdir(folder, { recursive: true });
  await page.screenshot({ path: `${folder}/${name}.png` });
}

/** The answer of the step looked at, why nobody turns it, and what is next unless it is done on this very step. */
const mustBeThere = ({ headlines, stop }: Said, step: string): string[] => [
  ...headlines.filter((each) => each.step === step).map(({ sentence }) => sentence),
  ...stop.map(({ sentence }) => sentence),
];

describe('ten calls in two browsers: what is found is on both screens, in one voice, as the last of it is entered', () => {
  test.each(SAID)('“%s”', async (said) => {
    const call = CALLS.find((each) => each.said === said);
    if (call === undefined) throw new Error(`no call begins “${said}”`);
    const { goal, entries } = call;
    const twin = await saidIn(await play(service, person, goal, entries));
    const step = twin.headlines[0]?.step ?? 'triage';

    const playing = await openToPlay(service, person, goal);
    const link = await linkTo(playing);
    const byWhom = (entry: Entry) => (isBuilders(entry) ? link.bearer : person.bearer);
    for (const entry of entries.slice(0, -1)) await playing.enter(entry, byWhom(entry));
    const deskCookie = `benchcall-desk=${person.cookies['benchcall-desk']}`;
    const desk = await look(`/calls/${playing.callId}/steps/${step}`, deskCookie, {
      viewport: { width: 1280, height: 800 },
    });
    const bench = await look(`/bench/steps/${step}`, link.cookie, PHONE);
    for (const page of [desk, bench]) {
      await page.evaluate(() => {
        document.body.dataset.same = 'yes';
      });
    }
    await desk.getByText('Pat at the engine, at the engine, is here').waitFor();
    await bench.getByText('Robin at the desk, at the desk, is here').waitFor();

    const last = entries.at(-1);
    if (last !== undefined) await playing.enter(last, byWhom(last));
    const [told, toldAtBench] = [await saidIn(playing), await saidIn(playing, link.bearer)];
    expect(told.headlines.map(({ sentence }) => sentence)).toEqual(
      twin.headlines.map(({ sentence }) => sentence),
    );
    await comesToSay(desk, mustBeThere(told, step));
    await comesToSay(bench, mustBeThere(toldAtBench, step));
    for (const page of [desk, bench]) {
      const [wide, room] = await page.evaluate(() => [
        document.documentElement.scrollWidth,
        document.documentElement.clientWidth,
      ]);
      expect(wide).toBeLessThanOrEqual(room ?? 0);
    }
    const name = said.slice(0, 24).replaceAll(/\W+/g, '-').toLowerCase();
    await picture(desk, `${name}-desk`);
    await picture(bench, `${name}-bench`);
  });
});
