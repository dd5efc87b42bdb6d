import { expect, test } from 'vitest';
import { computation as atFullLift } from '../../server/mechanics/computations/ratio-at-full-lift.ts';
import { computation as throughLift } from '../../server/mechanics/computations/ratio-through-lift.ts';
import { mm } from './helpers/quantities.ts';
import { runner } from './helpers/runner.ts';

test('at full lift a ratio of a hundred is taken, what is above it is refused', () => {
  const { number, refused } = runner(atFullLift);
  const series = (lift: number) => ({
    readings: [mm(lift), mm(lift)],
    graduation: mm(0.01),
    errorLimit: mm(0.01),
  });
  const body = (valve: number, lobe: number) => ({
    valveLift: series(valve),
    lobeLift: series(lobe),
    sameIndicator: false,
    spring: 'light',
  });
  expect(number(body(100, 1), 'ratio')).toBe(100);
  expect(refused(body(101, 1))).toEqual(['/valveLift impossible-input', '/lobeLift impossible-input']);
});

test('through the lift too; both passes are named where there are two', () => {
  const { number, refused } = runner(throughLift);
  const pairs = (ratio: number) =>
    [1, 2, 3].map((lobe) => ({ lobeLift: mm(lobe), valveLift: mm(lobe * ratio) }));
  const body = (ratio: number) => ({ pairs: pairs(ratio), readingUncertainty: mm(0.01) });
  expect(number(body(99), 'ratio.value')).toBeCloseTo(99, 9);
  expect(refused(body(101))).toEqual(['/pairs impossible-input']);
  const secondPass = {
    pairs: pairs(100.9),
    springSeatLoad: { value: 600, unit: 'N' },
    springRate: { value: 60, unit: 'N/mm' },
  };
  expect(refused({ ...body(101), secondPass })).toEqual([
    '/pairs impossible-input',
    '/secondPass impossible-input',
  ]);
});
