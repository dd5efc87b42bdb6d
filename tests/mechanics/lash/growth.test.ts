import { describe, expect, test } from 'vitest';
import { lashGrowths } from '../../../server/mechanics/lash/growth.ts';
import { grewAgain, lashQuestions } from '../../../server/mechanics/lash/lash-questions.ts';
import type { LashLine } from '../../../server/mechanics/lash/types.ts';

const IN = 0.0254;
/** Growth over .004 on one valve is asked about: desk playbook call 5, common practice, no published source. */
const LIMIT = 0.004 * IN;

function line(gap: number | readonly [number, number], more: Partial<LashLine> = {}): LashLine {
  const [low, high] = typeof gap === 'number' ? [gap, gap] : gap;
  return {
    cylinder: 6,
    valve: 'exhaust',
    gap: { low: low * IN, high: high * IN },
    moment: 'found',
    engine: 'hot',
    nut: 'held',
    ...more,
  };
}
const set = (gap: number, more: Partial<LashLine> = {}) => line(gap, { moment: 'set', ...more });
const inThou = (lines: readonly LashLine[]) =>
  lashGrowths(lines, LIMIT).map(({ low, high }) =>
    [low, high].map((each) => (each === undefined ? undefined : Math.round((each / IN) * 1e4) / 10)),
  );
const asked = (lines: readonly LashLine[]) => lashQuestions(lashGrowths(lines, LIMIT), LIMIT, 'stud');

describe('growth of a gap', () => {
  test('is what was found less what it was last set to, not less what was found before', () => {
    expect(inThou([set(0.018), line(0.022), set(0.018), line(0.025)])).toEqual([[7, 7]]);
  });

  test('without a setting it is counted from the first it was found at', () => {
    expect(inThou([line(0.018), line(0.021), line(0.026)])).toEqual([[8, 8]]);
    expect(inThou([line(0.018)])).toEqual([]);
    expect(inThou([line(0.018), set(0.02)])).toEqual([]);
  });

  test('between two gauges it lies between two growths, and no middle is made of them', () => {
    expect(inThou([set(0.018), line([0.022, 0.024])])).toEqual([[4, 6]]);
    expect(asked([set(0.018), line([0.022, 0.024])])).toEqual([]);
    expect(asked([set(0.018), line([0.023, 0.025])])[0]?.size).toBe(
      'It grew by .005 to .007 in, where .004 in is ordinary.',
    );
  });

  test('hot is not set against cold', () => {
    expect(asked([set(0.018, { engine: 'cold' }), line(0.03)]).map(({ code }) => code)).toEqual([
      'lash-heat-differs',
    ]);
  });
});

describe('what it raises', () => {
  test('.004 is ordinary, over it is asked about', () => {
    expect(asked([set(0.018), line(0.022)])).toEqual([]);
    expect(asked([set(0.018), line(0.0221)]).map(({ code }) => code)).toEqual(['lash-grew']);
  });

  test.each([
    ['moved', 'Did the lock let go?', 'set-screw'],
    ['held', 'Is something wearing on this valve?', 'base circle'],
    ['not-looked', 'Did the nut move?', 'draw a line over nut and stud'],
  ] as const)('the nut %s: its own test', (nut, ask, test_) => {
    const [question] = asked([set(0.018), line(0.025, { nut })]);
    expect(question?.ask).toBe(ask);
    expect(question?.test).toContain(test_);
  });

  test('all valves, three or more: oil or the way it was done, not a part', () => {
    const valves = [1, 2, 3].flatMap((cylinder) => [set(0.018, { cylinder }), line(0.026, { cylinder })]);
    expect(asked(valves).map(({ code }) => code)).toEqual(['lash-grew-everywhere']);
    const oneHeld = [...valves, set(0.018, { cylinder: 4 }), line(0.018, { cylinder: 4 })];
    expect(asked(oneHeld).map(({ code }) => code)).toEqual(['lash-grew', 'lash-grew', 'lash-grew']);
  });

  test('grown again after it was set again is stopped', () => {
    const once = [set(0.018), line(0.025)];
    const twice = [...once, set(0.018), line(0.024)];
    expect(grewAgain(lashGrowths(once, LIMIT), LIMIT)).toEqual([]);
    expect(grewAgain(lashGrowths(twice, LIMIT), LIMIT)).toHaveLength(1);
    expect(grewAgain(lashGrowths([...once, set(0.018), line(0.019)], LIMIT), LIMIT)).toEqual([]);
  });

  test('a gap that closed is asked about too', () => {
    const codes = (...lines: LashLine[]) => asked(lines).map(({ code }) => code);
    const unsaid = (each: LashLine): LashLine => ({ ...each, engine: 'not-said' });
    expect(codes(unsaid(set(0.018)), unsaid(line(0.012)))).toEqual(['lash-closed']);
    expect(codes(set(0.018), { ...line(0.012), nut: 'not-looked' })).toEqual(['lash-closed-nut']);
    expect(codes(set(0.018), unsaid(line(0.012)))).toEqual(['lash-heat-unsaid']);
    // What the log says of heat and lock is not asked.
    expect(codes(set(0.018), line(0.012))).toEqual([]);
  });
});
