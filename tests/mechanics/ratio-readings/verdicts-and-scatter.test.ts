import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { againstUsual } from '../../../server/mechanics/ratio-readings/deflection.ts';
import { judgeByInterval, judgeNominals } from '../../../server/mechanics/ratio-readings/nominal-verdicts.ts';
import { isSinking } from '../../../server/mechanics/ratio-readings/passes.ts';
import { ratioBudget } from '../../../server/mechanics/ratio-readings/ratio-budget.ts';
import { fitThroughLift } from '../../../server/mechanics/ratio-readings/through-lift.ts';
import { expectNear } from '../helpers/near.ts';

describe('nominals against an interval (JCGM 106:2012, 8.2, from memory)', () => {
  const verdicts = (nominals: number[], low: number, high: number) =>
    judgeByInterval(nominals, [low, high]).map(({ verdict }) => verdict);

  test('one below and one above leave the one inside alone', () => {
    expect(verdicts([1.5, 1.6, 1.7], 1.58, 1.62)).toEqual(['differs', 'agrees', 'differs']);
    expect(verdicts([1.5, 1.6], 1.58, 1.62)).toEqual(['differs', 'agrees']);
    expect(verdicts([1.6, 1.7], 1.58, 1.62)).toEqual(['agrees', 'differs']);
  });

  test('two inside can’t be told apart; the same one twice is one', () => {
    expect(verdicts([1.6, 1.61, 1.7], 1.58, 1.62)).toEqual(['cannot-tell', 'cannot-tell', 'differs']);
    expect(verdicts([1.6, 1.6], 1.58, 1.62)).toEqual(['agrees', 'agrees']);
  });

  test('the ends of the interval are inside', () => {
    expect(verdicts([1.5], 1.5, 1.6)).toEqual(['agrees']);
    expect(verdicts([1.6], 1.5, 1.6)).toEqual(['agrees']);
    expect(verdicts([1.5, 1.6], 1.5, 1.6)).toEqual(['cannot-tell', 'cannot-tell']);
  });

  test('the lift that each needs is ratio times lobe: 1.6 on 9 mm is 14.4 mm', () => {
    expectNear(judgeNominals([1.6], [1.5, 1.7], 0.009)[0]?.needsValveLift ?? 0, 0.0144);
  });
});

describe('peaks that fall each time (common practice, no source)', () => {
  test.each([
    [[3, 2, 1], true],
    [[5, 4, 3, 2], true],
    [[3, 2], false],
    [[3], false],
    [[3, 2, 2], false],
    [[3, 3, 3], false],
    [[3, 2, 2.5], false],
    [[1, 2, 3], false],
    // Half a unit a pass is what the hand is read to.
    [[3, 2.5, 2], false],
    [[3, 2.5, 1], true],
  ])('%j, of one unit a pass and more: %s', (readings, sinking) => {
    expect(isSinking(readings, 1)).toBe(sinking);
  });
});

describe('a scatter known before, pooled with what the passes show', () => {
  /** Any handbook of statistics: degrees of freedom as weights; a scatter known to a quarter has eight (JCGM 100, G.3). */
  const pooled = (usual: number, own: number, n: number) =>
    Math.sqrt((8 * usual ** 2 + (n - 1) * own ** 2) / (8 + n - 1));
  const within = (readings: number[], usualScatter?: number) => ({
    readings,
    graduation: 1e-5,
    errorLimit: 0,
    ...(usualScatter === undefined ? {} : { usualScatter }),
  });
  const repeatability = (readings: number[], usual?: number) =>
    ratioBudget(within(readings, usual), within([0.009]), false).budget.find(
      ({ source }) => source === 'valve lift, repeatability',
    )?.contribution;

  test('two passes .02 mm apart, usual scatter .03 mm', () => {
    // Two readings d apart have s = d/√2; their mean is uncertain by s/√2, as a ratio over a lobe of 9 mm.
    const s = pooled(3e-5, 2e-5 / Math.SQRT2, 2);
    expectNear(repeatability([0.0144, 0.01442], 3e-5) ?? 0, s / Math.SQRT2 / 0.009);
    expectNear(repeatability([0.0144, 0.01442]) ?? 0, 2e-5 / Math.SQRT2 / Math.SQRT2 / 0.009);
  });

  test('one pass has the usual scatter whole, and none where nothing is said', () => {
    expectNear(repeatability([0.0144], 3e-5) ?? 0, 3e-5 / 0.009);
    expect(repeatability([0.0144])).toBeUndefined();
  });
});

test('readings that nothing is wrong with: no share of nothing', () => {
  const exact = { readings: [0.0144, 0.0144], graduation: 0, errorLimit: 0 };
  const { budget, combined } = ratioBudget(exact, { ...exact, readings: [0.009, 0.009] }, false);
  expect(combined.standardUncertainty).toBe(0);
  for (const { share } of budget) expect(share).toBe(0);
});

test('stations a last digit apart give no line, and the field is named', () => {
  const at = (steps: number) => ({
    lobeLift: 0.005 * (1 + steps * Number.EPSILON),
    valveLift: 0.008 * (1 + steps * Number.EPSILON),
  });
  const near = [at(0), at(2), at(4)];
  expect(() => fitThroughLift(near, undefined, 1e-5)).toThrow(
    expect.objectContaining({ faults: [expect.objectContaining({ pointer: '/pairs' })] }),
  );
});

test('any band: a deflection is set against it by its whole interval', () => {
  const micro = fc.integer({ min: 0, max: 2000 });
  fc.assert(
    fc.property(micro, micro, micro, micro, (off, half, one, other) => {
      const [from, to] = [Math.min(one, other), Math.max(one, other)];
      const told = againstUsual(off * 1e-6, half * 1e-6, { from: from * 1e-6, to: to * 1e-6 });
      // In whole micrometres, where no rounding can decide.
      const wanted = off + half < from ? 'less' : off - half > to ? 'more' : 'usual';
      expect(told).toBe(wanted);
    }),
  );
});
