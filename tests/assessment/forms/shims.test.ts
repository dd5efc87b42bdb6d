import { describe, expect, test } from 'vitest';
import type { Evidence, LashEvidence } from '../../../server/mechanics/assessment/evidence.ts';
import { PLAIN } from '../../mechanics/assessment/plain-build.ts';
import { assessAsTold } from '../../tools/told/assess-as-told.ts';

const assess = assessAsTold('forms-shims');

/*
 * Shims of a bucket engine: shim wanted = shim in + gap found − gap wanted, derived by hand beside each. That a valve
 * without a gap may be held off its seat, and burns: common practice, no published source.
 */

const MM = 0.001;

type Line = [place: string, found: number, shim?: number, more?: Partial<LashEvidence>];

const lines = (all: readonly Line[]): LashEvidence[] =>
  all.map(([place, found, shim, more = {}], index) => {
    const [cylinder = '1', valve] = place.split(' ');
    return {
      id: `lash ${place}`,
      line: index + 1,
      standing: true,
      cylinder: Number(cylinder),
      valve: valve === 'exhaust' ? 'exhaust' : valve === 'intake-2' ? 'intake-2' : 'intake',
      gap: { value: found * MM },
      readAs: `${found} mm`,
      moment: 'found',
      engine: 'cold',
      nut: 'not-looked',
      day: '2026-03-14',
      ...(shim === undefined ? {} : { shim: shim * MM }),
      ...more,
    };
  });

const bucket = (all: readonly Line[], stock: readonly number[] = [], more: Partial<Evidence> = {}) =>
  assess({
    ...PLAIN,
    call: { ...PLAIN.call, goal: 'adjuster' },
    engine: {
      cylinders: 2,
      intakeValves: 2,
      gear: 'bucket',
      lifter: 'solid-flat',
      shimStock: stock.map((each) => each * MM),
    },
    card: { lashAt: 'cold', intake: { lash: 0.15 * MM }, exhaust: { lash: 0.25 * MM } },
    lash: lines(all),
    ...more,
  });
const sentences = (said: ReturnType<typeof bucket>) =>
  said.details.lash.shims.rows.map(({ sentence }) => sentence);
const headlines = (said: ReturnType<typeof bucket>) =>
  said.headlines.map(({ sentence }) => sentence).join('\n');

describe('a valve without a gap', () => {
  const said = bucket(
    [
      ['2 intake-2', 0, 2.3],
      ['2 intake', 0.05, 2.3],
    ],
    [2.2, 2.25],
  );

  test('is never worked out as if none were its gap, takes no shim, and is not run', () => {
    const row = said.details.lash.shims.rows.find(({ valve }) => valve === 'intake-2');
    expect([row?.choice, row?.sentence]).toEqual([
      undefined,
      '2 intake 2: no gap found, so the valve may be held off its seat. A thinner shim goes in first; then the gap is measured.',
    ]);
    expect(said.notToRun.map(({ sentence }) => sentence)).toEqual([
      'Do not run it: 2 intake 2 has no gap, and a valve that is held off its seat burns.',
    ]);
    expect(headlines(said)).toMatch(/No gap found at 2 intake 2/);
    // 2.30 + .05 − .15 = 2.20.
    expect(sentences(said)[0]).toContain('2.20 mm from stock goes in for its 2.30 mm');
  });

  test('is asked for first of all, and what is missing says so', () => {
    expect(said.next?.sentence).toContain('2 intake 2: a thinner shim goes in first');
    expect(said.missing.map(({ sentence }) => sentence).join()).toContain('the shim of 2 intake 2');
  });
});

describe('one order for each valve', () => {
  test('no stock: its own shim is not said to stay while another is wanted', () => {
    // 2.60 + .05 − .15 = 2.50.
    const [only] = sentences(bucket([['1 intake', 0.05, 2.6]]));
    expect(only).toBe(
      '1 intake: 0.05 mm found, 0.15 mm wanted: too tight. It wants 2.50 mm for its 2.60 mm; no stock is on record, so one is to be ordered.',
    );
  });

  test('a stock that misses is said to miss, however near', () => {
    // 2.30 + .35 − .15 = 2.50; 2.40 would leave .25.
    const said = bucket([['1 intake', 0.35, 2.3]], [2.4]);
    expect(sentences(said)[0]).toMatch(/It wants 2\.50 mm .*none on record comes near enough.*ordered\.$/);
    expect(said.details.lash.shims.rows[0]?.toHave).toBeCloseTo(2.5 * MM, 9);
    expect(headlines(said)).toContain('Shims to order: 1 intake 2.50 mm.');
  });

  test('between two in stock both are told, each with the lash that it leaves', () => {
    // 2.30 + .35 = 2.65: 2.40 leaves .25, 2.60 leaves .05, where .15 is wanted.
    const [only] = sentences(bucket([['1 intake', 0.35, 2.3]], [2.2, 2.4, 2.6, 2.7]));
    expect(only).toContain(
      'It wants 2.50 mm for its 2.30 mm; none on record comes near enough (2.40 mm leaves 0.25 mm, 2.60 mm leaves 0.05 mm), so one is to be ordered.',
    );
  });

  test('a shim that went in is in stock no more', () => {
    // Worked by hand: 2 intake wants 2.60 + .25 − .15 = 2.70, and the one piece of that is in 1 intake.
    const set = { moment: 'set' } as const;
    const fitted: Line[] = [
      ['1 intake', 0.25, 2.6],
      ['1 intake', 0.15, 2.7, set],
      ['2 intake', 0.25, 2.6],
    ];
    expect(sentences(bucket(fitted, [2.65, 2.7])).at(-1)).toContain('It wants 2.70 mm');
    expect(sentences(bucket(fitted, [2.65, 2.7, 2.7])).at(-1)).toContain('2.70 mm from stock goes in');
    // Out of another valve it came from no stock: 2.70 was in 2 exhaust before.
    const moved: Line[] = [...fitted, ['2 exhaust', 0.25, 2.7], ['2 exhaust', 0.25, 2.65, set]];
    expect(sentences(bucket(moved, [2.65, 2.7])).find((each) => each.startsWith('2 intake:'))).toContain(
      '2.70 mm from stock goes in',
    );
  });

  test('near enough stays', () => {
    expect(sentences(bucket([['1 intake', 0.16, 2.6]]))).toEqual([
      '1 intake: 0.16 mm found, 0.15 mm wanted: near enough. Its own 2.60 mm shim stays.',
    ]);
  });
});

describe('what is found and what is not known', () => {
  test('shims that are worked out are a headline, in any order of entry', () => {
    const all: Line[] = [
      ['1 intake', 0.12, 2.6],
      ['1 exhaust', 0.31, 2.5],
      ['2 intake', 0.22, 2.5],
    ];
    // 2.57, 2.56, 2.57: two of stock, and the exhaust takes what the first intake had.
    const told = [all, all.toReversed()].map((order) => headlines(bucket(order, [2.57, 2.57, 2.56])));
    expect(told[0]).toMatch(/^Shims to fit: /);
    expect(told[1]).toBe(told[0]);
  });

  test('a figure that is lacking is next and missing, with its valve', () => {
    const said = bucket([
      ['1 intake', 0.15, 2.6],
      ['1 exhaust', 0.25],
    ]);
    expect(headlines(said)).toContain(
      'No shim yet for 1 exhaust. First: the shim that is in, measured itself.',
    );
    expect(said.next?.sentence).toContain('the shim of 1 exhaust');
    const without = bucket([['1 intake', 0.15, 2.6]], [], {
      card: { intake: { lash: 0.15 * MM }, exhaust: { lash: 0.25 * MM } },
    });
    expect(without.next?.sentence).toContain('whether the card’s lash is for a cold or a hot engine');
  });
});

test('of pushrods nothing of it is said', () => {
  const said = assess({ ...PLAIN, lash: lines([['1 intake', 0, 2.6]]) });
  expect(said.notToRun.map(({ id }) => id)).toEqual(['not-to-run:no-lash:1-intake']);
  expect(said.notToRun.map(({ wayOut }) => wayOut).join(' ')).not.toMatch(/shim/i);
  expect(headlines(said)).not.toMatch(/shim/i);
});
