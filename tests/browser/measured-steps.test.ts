import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type DemoCall, openDemoCall } from '../tools/demo-call.ts';
import { asShown, lowTargets, visit } from '../tools/looks.ts';

/** Marks, timing and lash entered at the bench with scripts off, then looked at from both sides. */
let demo: DemoCall;
beforeAll(async () => {
  demo = await openDemoCall();
});
afterAll(() => demo?.close());

const PHONE = { width: 320, height: 640 };
const TARGETS = '.builder > .form .button, .builder .field-input:visible, .builder > .form summary:visible';
const PARTS = [
  'geometry?of=marks',
  'geometry?of=roller-sweep',
  'timing?of=top-dead-centre',
  'timing?of=centreline',
  'timing?of=events',
  'adjuster?of=adjuster',
  'adjuster?of=lash',
  'adjuster?of=lash-hot-cold',
];

it('a builder without scripts keeps a mark, both stop readings, a centreline and two lashes', {
  timeout: 300_000,
}, async () => {
  const page = await demo.bench({ viewport: { width: 360, height: 740 }, javaScriptEnabled: false });
  const open = (at: string) => page.goto(`${demo.base}/bench/steps/${at}`);
  // What was refused would answer 422, and no such response would come.
  const keep = async (button: string) => {
    const kept = page.waitForResponse((response) => response.status() === 303);
    await page.getByRole('button', { name: button }).click();
    await kept;
    await page.waitForURL(/\/bench\/steps\//);
  };
  const field = (name: string) => page.getByRole('textbox', { name });

  await open('geometry');
  await field('Cylinder').fill('3');
  await page.getByLabel('Valve', { exact: true }).selectOption('intake');
  await field('Width of the mark').fill('.062');
  await page.getByRole('radio', { name: 'Toward the valley' }).check();
  await field('Its middle from the stem’s middle').fill('.03');
  await field('Pushrod it was made with').fill('7.8');
  await keep('Save the mark');
  expect(await page.locator('.drawing-caption').allTextContents()).toContainEqual(
    expect.stringContaining('Marks on 3 intake, by pushrod length'),
  );

  await open('timing?of=top-dead-centre');
  await field('Before TDC, at the stop').fill('35.25');
  await field('After TDC, at the stop').fill('36.75');
  await keep('Save both readings');
  await page.getByRole('link', { name: 'Next: the centreline' }).click();
  await field('Wheel on the way up').fill('60.75');
  await field('Wheel on the way down').fill('146.25');
  await page.getByLabel('The pointer, since the stop was read').selectOption('left');
  await keep('Save the centreline');
  expect(await page.locator('.builder.stack').textContent()).toContain('The intake peaks 102.75° after TDC');

  for (const [gap, moment] of [
    ['.018', 'Set to this, and left so'],
    ['.025', 'Found so: as it stood, or read again once locked'],
  ] as const) {
    await open('adjuster?of=lash');
    await field('Cylinder').fill('6');
    await page.getByLabel('Valve', { exact: true }).selectOption('intake');
    await page.locator('#lash-f-lash').fill(gap);
    await page.getByRole('radio', { name: moment }).check();
    await page.getByRole('radio', { name: 'Had not moved' }).check();
    await keep('Save the lash');
  }
  expect(await page.locator('.builder.stack').textContent()).toContain('Is something wearing on this valve?');
  await page.context().close();
});

describe('with all of that on record', () => {
  const places = (home: string) => PARTS.map((part) => [part, `${home}/steps/${part}`] as const);

  it('at the desk, in the dark, every part meets the access rules and fits its screen', {
    timeout: 120_000,
  }, async () => {
    const page = await demo.desk({ viewport: { width: 1280, height: 900 }, colorScheme: 'dark' });
    const found = await visit(page, places(`${demo.base}/calls/${demo.callId}`), {
      all: () => asShown(page, 'too'),
    });
    expect(found.get('all')).toEqual({});
  });

  it('on a small phone every part meets the access rules, fits, and has targets at least 44 px high', {
    timeout: 120_000,
  }, async () => {
    const page = await demo.bench({ viewport: PHONE });
    const found = await visit(page, places(`${demo.base}/bench`), {
      all: () => asShown(page, 'too'),
      targets: () => lowTargets(page, TARGETS),
    });
    expect(found.get('all')).toEqual({});
    expect(found.get('targets')).toEqual({});
  });
});
