import { describe, expect, test } from 'vitest';
import { computation } from '../../server/mechanics/computations/separation-speed.ts';
import { angleLessSine } from '../../server/mechanics/motion-laws/sine-less.ts';
import { deg, mm, newtons } from './helpers/quantities.ts';
import { describeSaid } from './helpers/said.ts';

const body = {
  effectiveMass: { value: 0.2, unit: 'kg' },
  seatLoad: newtons(250),
  rate: { value: 40, unit: 'N/mm' },
  law: 'shm',
  lift: mm(10),
  flank: deg(180),
};
describeSaid(computation, {
  assumes: [['a law', body, ['rigid', 'law all the way', 'turns twice']]],
  warns: [['a law', body, ['upper bound', 'at the crank', 'maker']]],
});

describe('an angle less its sine, by the terms of Taylor’s series (Abramowitz and Stegun, 4.3.65)', () => {
  /** x³/6 − x⁵/120 + x⁷/5040 − x⁹/362880 + x¹¹/39916800, term by term. */
  const series = (x: number) =>
    x ** 3 / 6 - x ** 5 / 120 + x ** 7 / 5040 - x ** 9 / 362880 + x ** 11 / 39916800;
  test.each([1e-8, 1e-4, 0.01, 0.1, 0.3, 0.4999, 0.5, -0.3, -1e-4])('at %d', (x) => {
    // The first term left out, x¹³/6227020800, is under 1e-12 of the whole up to one half.
    expect(angleLessSine(x) / series(x)).toBeCloseTo(1, 11);
  });

  test.each([0, 0.6, 1, 3, -2])('elsewhere it is the plain difference: %d', (x) => {
    expect(angleLessSine(x)).toBeCloseTo(x - Math.sin(x), 15);
  });
});
