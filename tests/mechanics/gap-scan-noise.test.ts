import { describe, expect, test } from 'vitest';
import { computation } from '../../server/mechanics/computations/gap-scan.ts';
import { exactLeast, gapAt, inventedEngine, numbers } from './helpers/exact-gap.ts';
import { deg, inches } from './helpers/quantities.ts';
import { partOf, runner } from './helpers/runner.ts';

const { run } = runner(computation);

/** 97.5 % point of the normal distribution (NIST/SEMATECH e-Handbook of Statistical Methods, 1.3.6.7.1). */
const Z = 1.959964;
const SCANS = 1500;

/** Of scans that scatter over exact curves, how many intervals hold the exact least, and how wide they are. */
function held(step: number, sigma: number) {
  const { uniform, normal } = numbers(Math.round(step * 1000 + sigma * 1e6));
  let [inside, width, judged] = [0, 0, 0];
  for (let scan = 0; scan < SCANS; scan += 1) {
    const engine = inventedEngine(uniform, scan % 2 === 0 ? 'intake' : 'exhaust');
    const { angle, gap } = exactLeast(engine);
    const first = angle - 12 - uniform(0, step);
    const readings = Array.from({ length: Math.ceil((24 + step) / step) + 1 }, (_, index) => {
      const at = first + index * step;
      return { crankAngle: deg(at), gap: inches(gapAt(engine, at) + sigma * normal()) };
    });
    const { result } = run({ readings, readingUncertainty: inches(Z * sigma) });
    const [low, high] = [Number(partOf(result, 'interval95.0')), Number(partOf(result, 'interval95.1'))];
    if (partOf(result, 'interval95') === undefined) continue;
    judged += 1;
    width += high - low;
    if (low <= gap && gap <= high) inside += 1;
  }
  expect(judged / SCANS).toBeGreaterThan(0.98);
  return { share: inside / judged, width: width / judged };
}

/**
 * The exact least of each curve is found without any fit. A count of 1 500 scans at 95 in 100 scatters by .6 in 100
 * (binomial), so that one under 93 in 100 is no chance.
 */
describe('scans of exact curves with readings that scatter', () => {
  test.each([
    [0.5, 0.0005],
    [1, 0.0003],
    [1, 0.001],
    [2, 0.0005],
    [2, 0.001],
    [3, 0.001],
    [4, 0.001],
    [5, 0.001],
  ])('every %d°, scatter %d in: 93 of 100 intervals and more hold the exact least', (step, sigma) => {
    const { share } = held(step, sigma);
    expect(share).toBeGreaterThanOrEqual(0.93);
    expect(share).toBeLessThan(0.985);
  });

  test('more readings about the least make the interval narrower, as the root of their number does', () => {
    const [fine, coarse] = [held(0.5, 0.0005).width, held(2, 0.0005).width];
    expect(coarse / fine).toBeGreaterThan(1.6);
    expect(coarse / fine).toBeLessThan(2.4);
  });
});

test('one reading far under the others is no scatter: it decides with its neighbours', () => {
  const scan = (at: number, gap: number) => ({ crankAngle: deg(at), gap: inches(gap) });
  const curve = [0, 2, 4, 6, 8, 10, 12, 14, 16].map((at) => scan(at, 0.1 + 0.0002 * (at - 8) ** 2));
  const dent = curve.map((each, index) => (index === 5 ? scan(10, 0.085) : each));
  const { result } = run({ readings: dent, readingUncertainty: inches(0.002) });
  expect(Number(partOf(result, 'least.value') ?? partOf(result, 'least'))).toBeLessThanOrEqual(0.085);
});
