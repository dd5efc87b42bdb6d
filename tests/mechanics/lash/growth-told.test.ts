import { describe, expect, test } from 'vitest';
import allowances from '../../../seeds/allowances.json' with { type: 'json' };
import { growthTold, lashGrowths } from '../../../server/mechanics/lash/growth.ts';

const IN = 0.0254;
type Gap = number | readonly [number, number];
const gapOf = (gap: Gap) =>
  typeof gap === 'number' ? { low: gap * IN, high: gap * IN } : { low: gap[0] * IN, high: gap[1] * IN };
const valve = { cylinder: 1, valve: 'intake', engine: 'cold', nut: 'not-looked' } as const;
function told(base: Gap, found: Gap, engine: 'cold' | 'hot' = 'cold') {
  const [growth] = lashGrowths(
    [
      { ...valve, moment: 'set', gap: gapOf(base) },
      { ...valve, engine, moment: 'found', gap: gapOf(found) },
    ],
    0.004 * IN,
  );
  return growth === undefined ? 'nothing' : growthTold(growth);
}

/* A feeler tells no finer than .001 in (seed table, common practice): less than a step is neither growth nor none. */
describe('what feelers tell of a growth', () => {
  test('the step is that of the seed table', () => {
    expect(allowances.allowances['lash-as-set'].value).toBe(0.001);
  });

  test.each([
    [0.016, 0.016, 'held'],
    [0.016, 0.017, 'cannot-tell'],
    [0.017, 0.016, 'cannot-tell'],
    [0.016, 0.018, 'grew'],
    [0.018, 0.016, 'closed'],
    [0.016, [0.016, 0.018], 'cannot-tell'],
    [[0.016, 0.018], [0.016, 0.018], 'cannot-tell'],
    [[0.016, 0.018], [0.018, 0.02], 'cannot-tell'],
    [0.016, [0.018, 0.02], 'grew'],
    [[0.016, 0.018], [0.02, 0.022], 'grew'],
  ] as const)('%j, then %j: %s', (base, found, wanted) => {
    expect(told(base, found)).toBe(wanted);
  });

  test('hot against cold is not compared', () => {
    expect(told(0.016, 0.02, 'hot')).toBe('not-compared');
  });
});
