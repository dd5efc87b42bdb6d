import { describe, expect, test } from 'vitest';
import { lashGrowths } from '../../../server/mechanics/lash/growth.ts';
import { grewAgain, lashQuestions } from '../../../server/mechanics/lash/lash-questions.ts';
import type { LashLine } from '../../../server/mechanics/lash/types.ts';
import { unusualLash } from '../../../server/mechanics/lash/usual-lash.ts';

const IN = 0.0254;
const LIMIT = 0.004 * IN;

const line = (
  cylinder: number,
  moment: LashLine['moment'],
  gap: number,
  more: Partial<LashLine> = {},
): LashLine => ({
  cylinder,
  valve: 'intake',
  gap: { low: gap * IN, high: gap * IN },
  moment,
  engine: 'hot',
  nut: 'not-looked',
  ...more,
});
const between = (low: number, high: number) => ({ gap: { low: low * IN, high: high * IN } });
const asked = (lines: readonly LashLine[]) => lashQuestions(lashGrowths(lines, LIMIT), LIMIT, 'not-known');
const codes = (lines: readonly LashLine[]) =>
  asked(lines).map(({ code, cylinder }) => `${cylinder ?? 'all'} ${code}`);
const grew = (cylinder: number, by: number) => [
  line(cylinder, 'set', 0.018),
  line(cylinder, 'found', 0.018 + by),
];

describe('what is asked of a log', () => {
  test.each([
    ['.004 closed is ordinary', grew(1, -0.004), []],
    ['more is not', grew(1, -0.0041), ['1 lash-closed-nut']],
    ['.004 grown is ordinary', grew(1, 0.004), []],
    ['more is not', grew(1, 0.0041), ['1 lash-grew']],
    ['two of two grew: each its own', [...grew(1, 0.01), ...grew(2, 0.01)], ['1 lash-grew', '2 lash-grew']],
    [
      'three of three: one question',
      [...grew(1, 0.01), ...grew(2, 0.01), ...grew(3, 0.01)],
      ['all lash-grew-everywhere'],
    ],
    [
      'three of four: each its own',
      [...grew(1, 0.01), ...grew(2, 0.01), ...grew(3, 0.01), ...grew(4, 0.004)],
      ['1 lash-grew', '2 lash-grew', '3 lash-grew'],
    ],
    [
      'three grew and one was read at another heat',
      [
        ...grew(1, 0.01),
        ...grew(2, 0.01),
        ...grew(3, 0.01),
        line(4, 'set', 0.018),
        line(4, 'found', 0.03, { engine: 'cold' }),
      ],
      ['all lash-grew-everywhere', '4 lash-heat-differs'],
    ],
    ['nothing found since', [line(1, 'found', 0.02), line(1, 'set', 0.02)], []],
    ['found once', [line(1, 'found', 0.03)], []],
    [
      'the other valve of the cylinder is another valve',
      [line(1, 'set', 0.018), line(1, 'found', 0.03, { valve: 'exhaust' })],
      [],
    ],
  ])('%s', (_what, lines, wanted) => {
    expect(codes(lines)).toEqual(wanted);
  });

  test('sizes are said with the least and the most that they can be', () => {
    const [one] = asked([line(1, 'set', 0.018), line(1, 'found', 0, between(0.024, 0.026))]);
    expect(one?.size).toBe('It grew by .006 to .008 in, where .004 in is ordinary.');
    expect(asked(grew(1, 0.01))[0]?.size).toBe('It grew by .010 in, where .004 in is ordinary.');
    expect(asked(grew(1, -0.01))[0]?.size).toBe('It closed by .010 in, where .004 in is ordinary.');
    const all = asked([...grew(1, 0.012), ...grew(2, 0.01), ...grew(3, 0.011)]);
    expect(all[0]?.size).toBe('All 3 valves grew, by .010 in at the least.');
    expect(asked(grew(7, 0.01))[0]).toMatchObject({ cylinder: 7, valve: 'intake' });
  });

  test('a gap between two gauges closed for certain only by its upper one', () => {
    expect(codes([line(1, 'set', 0.018), line(1, 'found', 0, between(0.01, 0.0139))])).toEqual([
      '1 lash-closed-nut',
    ]);
    expect(codes([line(1, 'set', 0.018), line(1, 'found', 0, between(0.01, 0.0141))])).toEqual([]);
  });
});

describe('grown again after it was set again', () => {
  const again = (lines: readonly LashLine[]) =>
    grewAgain(lashGrowths(lines, LIMIT), LIMIT).map(({ cylinder }) => cylinder);
  const twice = (first: number, second: number, more: Partial<LashLine> = {}) => [
    line(1, 'set', 0.018),
    line(1, 'found', 0.018 + first, more),
    line(1, 'set', 0.018),
    line(1, 'found', 0.018 + second),
  ];
  test.each([
    ['both times', twice(0.006, 0.006), [1]],
    ['the first time by what is ordinary', twice(0.004, 0.006), []],
    ['the first time by a little more', twice(0.0041, 0.006), [1]],
    ['the second time by what is ordinary', twice(0.006, 0.004), []],
    ['the first time read at another heat', twice(0.006, 0.006, { engine: 'cold' }), []],
    ['the first time closed', twice(-0.006, 0.006), []],
    ['set but once', [line(1, 'set', 0.018), line(1, 'found', 0.03), line(1, 'found', 0.04)], []],
    [
      'never set before it was first found: counted from the first found',
      [line(1, 'found', 0.018), line(1, 'found', 0.024), line(1, 'set', 0.018), line(1, 'found', 0.024)],
      [1],
    ],
    [
      'found wide once before the first setting: set against nothing',
      [line(1, 'found', 0.03), line(1, 'set', 0.018), line(1, 'found', 0.024)],
      [],
    ],
    [
      'set to more, and found at that: no growth',
      [
        line(1, 'set', 0.018),
        line(1, 'set', 0.03),
        line(1, 'found', 0.03),
        line(1, 'set', 0.018),
        line(1, 'found', 0.024),
      ],
      [],
    ],
  ])('%s', (_what, lines, wanted) => {
    expect(again(lines)).toEqual(wanted);
  });
});

describe('the sentence of a lash that is not the usual one', () => {
  const of = (low: number, high: number, more: object = {}) =>
    unusualLash({
      low: low * IN,
      high: high * IN,
      engine: 'hot',
      lifter: 'solid-roller',
      card: undefined,
      ...more,
    })?.size;
  test.each([
    [
      'one gap',
      0.04,
      0.04,
      {},
      'Set to .040 in, hot; .014 in to .028 in is usual for this lifter, hot (common practice, no published source).',
    ],
    ['between two gauges', 0.04, 0.042, {}, 'Set to .040 in to .042 in, hot; .014 in'],
    ['cold', 0.05, 0.05, { engine: 'cold' }, 'Set to .050 in, cold;'],
    ['heat not said', 0.05, 0.05, { engine: 'not-said' }, 'Set to .050 in, hot or cold not said;'],
    ['a card', 0.04, 0.04, { card: 0.02 * IN }, 'Set to .040 in, hot; the card has .020 in.'],
    ['a card without a lifter', 0.04, 0.04, { card: 0.02 * IN, lifter: undefined }, 'the card has .020 in.'],
    ['hydraulic', 0.01, 0.01, { lifter: 'hydraulic-flat' }, 'no gap; .010 in was set.'],
  ])('%s', (_what, low, high, more, wanted) => {
    expect(of(low, high, more)).toContain(wanted);
  });

  test.each([
    [0.024, undefined],
    [0.0241, 'asked'],
    [0.016, undefined],
    [0.0159, 'asked'],
  ])('hot, within .004 in of a card of .020: %d', (gap, wanted) => {
    expect(of(gap, gap, { card: 0.02 * IN }) === undefined ? undefined : 'asked').toBe(wanted);
  });

  test('nothing known to set it against', () => {
    expect(of(0.1, 0.1, { lifter: undefined })).toBeUndefined();
  });
});
