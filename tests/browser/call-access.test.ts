import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { STEPS as STEPS_OF_CALL } from '../../server/steps/index.ts';
import { type DemoCall, openDemoCall } from '../tools/demo-call.ts';
import {
  asShown,
  type Found,
  inTheDark,
  lowTargets,
  nothing,
  onPaper,
  twiceTheText,
  visit,
} from '../tools/looks.ts';

/** Each page of a call is opened once on each side, and looked at there in every way: by day, in the dark, grown, printed. */
let demo: DemoCall;
let atDesk: Found;
let atBench: Found;

const STEPS = [
  ...STEPS_OF_CALL.map(({ name }) => name),
  'ratio?new=1',
  'ratio?kind=valve-lift-at&atLobeLift=.200',
  'identify?ask=rings',
].map((step) => `steps/${step}`);
const BESIDE = ['report', 'worksheet', 'photographs'];
const AT_DESK = [...BESIDE, 'hold', 'close', 'share', 'takeover'];
/** Colours are the same few on every page, and looking at them takes longest: the pages with most of them are enough. */
const COLOURED = new Set(['steps/triage', 'steps/ratio', 'steps/sheet', 'steps/consequences', 'report']);
/** What stands before a call has few colours, and is no part of it. */
const LISTS = ['/calls', '/calls/new'];
const TARGETS = '.builder > .form .button, .builder .field-input:visible';
const MINUTES = 60_000;
const WIDE = { width: 1280, height: 900 };
const NARROW = { width: 320, height: 640 };

beforeAll(async () => {
  demo = await openDemoCall();
  const call = `${demo.base}/calls/${demo.callId}`;
  const desk = await demo.desk({ viewport: WIDE });
  const bench = await demo.bench({ viewport: NARROW });
  const coloured = (place: string) => (COLOURED.has(place) ? 'too' : 'left out');
  const atTheDesk = [
    ...LISTS.map((at) => [at, demo.base + at] as const),
    ...[...STEPS, ...AT_DESK].map((at) => [at, `${call}/${at}`] as const),
  ];
  const atTheBench = [...STEPS, ...BESIDE].map((at) => [at, `${demo.base}/bench/${at}`] as const);
  [atDesk, atBench] = await Promise.all([
    visit(desk, atTheDesk, {
      day: (at) => asShown(desk, coloured(at)),
      dark: (at) => (COLOURED.has(at) || LISTS.includes(at) ? inTheDark(desk) : nothing()),
      grown: () => twiceTheText(desk),
      paper: () => onPaper(desk),
    }),
    visit(bench, atTheBench, {
      day: (at) => asShown(bench, coloured(at)),
      dark: (at) => (COLOURED.has(at) ? inTheDark(bench) : nothing()),
      grown: () => twiceTheText(bench),
      targets: (at) => (STEPS.includes(at) ? lowTargets(bench, TARGETS) : nothing()),
    }),
  ]);
}, 5 * MINUTES);
afterAll(() => demo?.close());

describe('every page of a call meets the access rules and fits its screen', () => {
  it('at the desk by day', () => {
    expect(atDesk.get('day')).toEqual({});
  });
  it('at the desk in the dark', () => {
    expect(atDesk.get('dark')).toEqual({});
  });
  it('at the desk with text at twice its size', () => {
    expect(atDesk.get('grown')).toEqual({});
  });
  it('on the narrowest phone by day', () => {
    expect(atBench.get('day')).toEqual({});
  });
  it('on the narrowest phone in the dark', () => {
    expect(atBench.get('dark')).toEqual({});
  });
  it('on the narrowest phone with text at twice its size', () => {
    expect(atBench.get('grown')).toEqual({});
  });
  it('on paper, at the width of A4', () => {
    expect(atDesk.get('paper')).toEqual({});
  });
  it('at the bench every target of a step is at least 44 px high', () => {
    expect(atBench.get('targets')).toEqual({});
  });

  it('with faults shown', async () => {
    const page = await demo.desk();
    await page.goto(`${demo.base}/calls/${demo.callId}/steps/ratio`);
    await page.getByLabel('Reading at full lift').fill('4"; drop');
    await page.getByRole('button', { name: 'Save reading' }).click();
    await page.locator('.error-summary').waitFor();
    expect(await asShown(page, 'too')).toEqual([]);
    await page.context().close();
  });
});

it('the looks find what is wrong: a wide page, a low target, and colours too pale in the dark alone', async () => {
  const page = await (await demo.browser.newContext({ viewport: NARROW })).newPage();
  await page.setContent(`<html lang="en"><title>Faulty</title><style>
    body { background: #fff; color: #000 }
    @media (prefers-color-scheme: dark) { p { color: #999 } }
    @media print { div { width: 900px } }
    </style><main><h1>Faulty</h1><p>Pale</p><div>Wide</div><button style="height:20px">Low</button></main>`);
  expect(await asShown(page, 'too')).toEqual([]);
  expect((await inTheDark(page)).join()).toMatch(/^color-contrast: /);
  expect((await onPaper(page)).join()).toMatch(/px too wide: <div>Wide/);
  expect((await lowTargets(page, 'button')).join()).toContain('20 px: <button');
  expect(await asShown(page, 'too'), 'each look leaves the page as it was').toEqual([]);
});
