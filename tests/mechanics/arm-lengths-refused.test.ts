import { describe, expect, test } from 'vitest';
import { computation } from '../../server/mechanics/computations/arm-lengths.ts';
import { inches } from './helpers/quantities.ts';
import { runner } from './helpers/runner.ts';

const { refused, number } = runner(computation);
const arms = (tip: number, cup: number, tipLimit = 0.005, cupLimit = 0.005) => ({
  pivotToTip: { value: inches(tip), errorLimit: inches(tipLimit) },
  pivotToCup: { value: inches(cup), errorLimit: inches(cupLimit) },
});

describe('lengths no ratio can be taken from', () => {
  test.each([
    ['limits of nearly half', arms(1.5, 1, 0.7499, 0.4999), []],
    ['half of the one', arms(1.5, 1, 0.75, 0.005), ['/pivotToTip/errorLimit']],
    ['half of the other', arms(1.5, 1, 0.005, 0.5), ['/pivotToCup/errorLimit']],
    ['both', arms(1.5, 1, 0.8, 0.6), ['/pivotToTip/errorLimit', '/pivotToCup/errorLimit']],
    ['a ratio of 100', arms(50, 0.5), []],
    ['above it', arms(50.1, 0.5), ['/pivotToTip/value', '/pivotToCup/value']],
  ])('%s', (_what, body, wanted) => {
    expect(refused(body)).toEqual(wanted.map((pointer) => `${pointer} impossible-input`));
  });
});

test('each arm’s limit counts by how much the ratio changes with it (JCGM 100:2008, 5.1.2, differences)', () => {
  const ratio = (tip: number, cup: number) => number(arms(tip, cup), 'ratio');
  const step = 1e-5;
  const byTip = (ratio(1.48 + step, 0.925) - ratio(1.48 - step, 0.925)) / (2 * step);
  const byCup = (ratio(1.48, 0.925 + step) - ratio(1.48, 0.925 - step)) / (2 * step);
  for (const [tipLimit, cupLimit] of [
    [0.005, 1e-9],
    [1e-9, 0.005],
    [0.004, 0.003],
  ] as const) {
    const wanted = Math.hypot(byTip * tipLimit, byCup * cupLimit) / Math.sqrt(3);
    expect(number(arms(1.48, 0.925, tipLimit, cupLimit), 'standardUncertainty')).toBeCloseTo(wanted, 8);
  }
});
