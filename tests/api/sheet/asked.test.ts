import { describe, expect, test } from 'vitest';
import { described } from '../../calls/entry.ts';
import { openToPlay } from '../../calls/play.ts';
import { openCall } from '../../tools/call.ts';
import { at } from '../../tools/numbers.ts';
import { HOW, lift, sheetService } from './tools.ts';

const { open, post, sheetOf, keep } = sheetService();

/** Invented intakes as real ones scatter, and what the fifth is instead. */
const LIFTS = ['.565', '.564', '.566', '.565', '.564', '.565', '.566', '.565'];
const rows = (lobe: string, valve: string) =>
  LIFTS.map((each, index) => ({
    lobe: index === 4 ? lobe : `.35${index % 3} in`,
    valve: index === 4 ? valve : `${each} in`,
  }));

const list = (value: unknown): unknown[] => (Array.isArray(value) ? value : []);
/** What the figures raise: how the lash was is asked of every sheet that does not say it. */
const ofFigures = (questions: unknown) =>
  list(questions).filter((each) => at(each, 'code') !== 'lash-not-said');
const said = (questions: unknown) =>
  ofFigures(questions).map((each) => [at(each, 'code'), at(each, 'about', 'cylinder'), at(each, 'ask')]);

/** Confusions of trade practice 7 on one row of eight: common practice, no published source. */
const SLIPS = [
  ['turn-miscounted', '.351 in', '.464 in'],
  ['turn-miscounted', '.251 in', '.564 in'],
  ['unit-mixed', '.351 in', '14.33 in'],
  ['gross-lift-as-lobe', '.564 in', '.564 in'],
  ['hand-read-backwards', '.351 in', '.536 in'],
  ['digits-swapped', '.351 in', '.654 in'],
] as const;

describe.each(SLIPS)('%s: lobe %s, valve %s', (code, lobe, valve) => {
  test('pushed, pasted and looked at before it is kept: one question, the same, on its row', async () => {
    const { service, person } = open();
    const [pushed, pasted] = [await openCall(service, person), await openCall(service, person)];
    await keep(
      pushed.buildId,
      rows(lobe, valve).flatMap((row, index) => [
        lift(index + 1, row.lobe, 'lobe-lift'),
        lift(index + 1, row.valve),
      ]),
    );
    const ofPushed = said((await sheetOf(pushed.buildId)).json.questions);
    expect(ofPushed.map(([what, cylinder]) => [what, cylinder])).toEqual([[code, 5]]);

    const text = ['cyl\tvalve\tlobe lift\tvalve lift']
      .concat(rows(lobe, valve).map((row, index) => `${index + 1}\tI\t${row.lobe}\t${row.valve}`))
      .join('\n');
    const url = `/api/v1/builds/${pasted.buildId}/sheet/paste`;
    const look = await post(url, { ...HOW, text });
    expect(said(look.json.questions)).toEqual(ofPushed);
    expect(at(look.json, 'questions', 0, 'lines')).toEqual([6]);
    expect((await sheetOf(pasted.buildId)).json.readings).toEqual([]);
    await post(url, { ...HOW, text, keep: true });
    expect(said((await sheetOf(pasted.buildId)).json.questions)).toEqual(ofPushed);
  });
});

/* .25 in for a 0.25 mm feeler, .016 in where the others are: common practice, no published source. */
test('a lash in a column that is a metric feeler is asked the same, pushed, looked at and pasted', async () => {
  const { service, person } = open();
  const [pushed, pasted] = [await openCall(service, person), await openCall(service, person)];
  const lashes = ['.010 in', '.25 in', '.011 in', '.010 in'];
  const done = await keep(
    pushed.buildId,
    lashes.map((each, index) => lift(index + 1, each, 'lash')),
    {},
  );
  const asked = said((await sheetOf(pushed.buildId)).json.questions);
  expect(asked).toEqual([['lash-unlikely', 2, expect.stringMatching(/really \.250 in/)]]);
  expect(said(done.questions)).toEqual(asked);
  const text = ['cyl\tvalve\tlash', ...lashes.map((each, index) => `${index + 1}\tI\t${each}`)].join('\n');
  const url = `/api/v1/builds/${pasted.buildId}/sheet/paste`;
  const look = await post(url, { text });
  expect(said(look.json.questions)).toEqual(asked);
  expect(at(look.json, 'questions', 0, 'lines')).toEqual([3]);
});

test('a row of a cylinder that the engine does not have is asked about before it is kept, as after', async () => {
  const { service, person } = open();
  const call = await openToPlay(service, person, 'one-valve-differs');
  await call.enter(described({ engine: { cylinders: 8 } }));
  const url = `/api/v1/builds/${call.buildId}/sheet/paste`;
  const text = ['cyl\tvalve\tvalve lift', '8\tI\t.525 in', '9\tI\t.525 in'].join('\n');
  const asked = ['no-such-valve', 9, expect.stringMatching(/^Cylinder 9, intake, has entries/)];
  const look = await post(url, { ...HOW, text });
  expect(said(look.json.questions)).toContainEqual(asked);
  await post(url, { ...HOW, text, keep: true });
  expect(said((await call.get('build/assessment')).questions)).toContainEqual(asked);
});
