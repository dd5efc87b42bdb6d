import { describe, expect, test } from 'vitest';
import {
  correlationsOf,
  type Fit,
  leastSquares,
} from '../../../server/mechanics/statistics/least-squares.ts';
import { expectNear } from '../helpers/near.ts';

const ones = (n: number): number[] => Array.from({ length: n }, () => 1);

function fitted(
  columns: readonly (readonly number[])[],
  y: readonly number[],
  weights?: readonly number[],
): Fit {
  const fit = leastSquares(columns, y, weights);
  if (fit === undefined) throw new Error('columns that can’t be told apart');
  return fit;
}

/** Standard deviation of an estimate, scaled by the scatter about the line. */
function deviation(fit: Fit, index: number): number {
  const scatter = fit.residualSquares / (fit.residuals.length - fit.estimates.length);
  return Math.sqrt((fit.covariance[index]?.[index] ?? Number.NaN) * scatter);
}

const [a, b] = [0, 1];

test('NIST StRD Norris: B0 −.262323073774029, B1 1.00211681802045, s .884796396144373', () => {
  const x = [
    2, 3374, 1182, 8846, 101, 2265, 6663, 9963, 4486, 7770, 5582, 4, 6, 7755, 6669, 3380, 4475, 116, 5560,
    2281, 9958, 8876, 1202, 3, 3, 5568, 3391, 8872, 9990, 7790, 111, 1183, 2292, 6691, 4489, 5,
  ];
  const more = [
    -1, 14, -1, 34, -9, 16, 22, 22, 5, 19, 10, -1, -5, 26, 19, 13, 14, -8, 17, 2, 22, 12, -6, 0, 3, 8, 2, 8,
    -5, -1, -9, -7, -3, -7, 3, -3,
  ];
  expect(x.reduce((sum, each) => sum + each, 0)).toBe(150904);
  expect(more.reduce((sum, each) => sum + each, 0)).toBe(225);
  const y = x.map((each, index) => (each + (more[index] ?? 0)) / 10);
  const fit = fitted([ones(36), x.map((each) => each / 10)], y);
  expectNear(fit.estimates[a] ?? 0, -0.262323073774029, 1e-11);
  expectNear(fit.estimates[b] ?? 0, 1.00211681802045, 1e-14);
  expectNear(deviation(fit, a), 0.232818234301152, 1e-12);
  expectNear(deviation(fit, b), 0.000429796848199937, 1e-12);
  expectNear(Math.sqrt(fit.residualSquares / 34), 0.884796396144373, 1e-12);
});

test('NIST StRD NoInt2, through the origin: B1 .727272727272727, s .369274472937998, R² .993348115299335', () => {
  const y = [3, 4, 4];
  const fit = fitted([[4, 5, 6]], y);
  expectNear(fit.estimates[0] ?? 0, 0.727272727272727, 1e-14);
  expectNear(deviation(fit, 0), 0.0420827318078432, 1e-12);
  expectNear(Math.sqrt(fit.residualSquares / 2), 0.369274472937998, 1e-12);
  // About zero, not about the mean.
  expectNear(1 - fit.residualSquares / y.reduce((sum, each) => sum + each ** 2, 0), 0.993348115299335, 1e-13);
});

test('JCGM 100:2008, H.3, thermometer: y1 −.1712(29), y2 .00218(67), r −.930, b(30) −.1494(41)', () => {
  const t = [21.521, 22.012, 22.512, 23.003, 23.507, 23.999, 24.513, 25.002, 25.503, 26.01, 26.511];
  const correction = [-0.171, -0.169, -0.166, -0.159, -0.164, -0.165, -0.156, -0.157, -0.159, -0.161, -0.16];
  const fit = fitted([ones(11), t.map((each) => each - 20)], correction);
  expectNear(fit.estimates[a] ?? 0, -0.17120379, 1e-7);
  expectNear(fit.estimates[b] ?? 0, 0.0021827, 1e-5);
  expectNear(deviation(fit, a), 0.0028776, 1e-5);
  expectNear(deviation(fit, b), 0.00066794, 1e-5);
  const r = correlationsOf(fit.covariance)[a]?.[b] ?? 0;
  expectNear(r, -0.93043, 1e-6);
  const at30 = (fit.estimates[a] ?? 0) + 10 * (fit.estimates[b] ?? 0);
  expectNear(at30, -0.1493768, 1e-6);
  const [ua, ub] = [deviation(fit, a), deviation(fit, b)];
  expectNear(Math.sqrt(ua ** 2 + 100 * ub ** 2 + 20 * r * ua * ub), 0.0041386, 1e-5);
});

describe('a weighted line of valve lift on lobe lift (calculated apart, three routes)', () => {
  const lobe = [0.1, 0.15, 0.2, 0.25, 0.3, 0.35];
  const valve = [0.1432, 0.2181, 0.2934, 0.3679, 0.4433, 0.518];
  const weights = [0.0005, 0.0005, 0.0005, 0.001, 0.001, 0.001].map((u) => 1 / u ** 2);

  test('intercept −.00676582(.00069050), slope 1.49981013(.00355784), r −.927457, χ² .337152', () => {
    const fit = fitted([ones(6), lobe], valve, weights);
    expectNear(fit.estimates[a] ?? 0, -0.00676582, 1e-6);
    expectNear(fit.estimates[b] ?? 0, 1.49981013, 1e-8);
    expectNear(Math.sqrt(fit.covariance[a]?.[a] ?? 0), 0.0006905, 1e-5);
    expectNear(Math.sqrt(fit.covariance[b]?.[b] ?? 0), 0.00355784, 1e-5);
    expectNear(correlationsOf(fit.covariance)[a]?.[b] ?? 0, -0.927457, 1e-6);
    expectNear(fit.residualSquares, 0.337152, 1e-5);
  });

  test('without weights the slope is 1.49948571; through the origin 1.46747788 with χ² 96.346', () => {
    expectNear(fitted([ones(6), lobe], valve).estimates[b] ?? 0, 1.49948571, 1e-8);
    const through = fitted([lobe], valve, weights);
    expectNear(through.estimates[0] ?? 0, 1.46747788, 1e-8);
    expectNear(Math.sqrt(through.covariance[0]?.[0] ?? 0), 0.00133038, 1e-5);
    expectNear(through.residualSquares, 96.346, 1e-5);
  });

  test('the mean of valve over lobe, 1.463711, is not the slope', () => {
    const mean = valve.reduce((sum, each, index) => sum + each / (lobe[index] ?? 1), 0) / 6;
    expectNear(mean, 1.463711, 1e-6);
  });
});

test('columns that depend on each other are told as such', () => {
  expect(
    leastSquares(
      [
        [1, 1, 1],
        [2, 2, 2],
      ],
      [1, 2, 3],
    ),
  ).toBeUndefined();
  expect(leastSquares([[0, 0, 0]], [1, 2, 3])).toBeUndefined();
});

describe('more columns than a line has', () => {
  const x = Array.from({ length: 21 }, (_, index) => index);
  const powers = [0, 1, 2, 3, 4, 5].map((power) => x.map((each) => each ** power));

  test('NIST StRD Wampler1: y = 1 + x + … + x⁵ at 0 … 20 gives six times 1 and no residual', () => {
    const y = x.map((_, index) => powers.reduce((sum, column) => sum + (column[index] ?? 0), 0));
    const fit = fitted(powers, y);
    for (const estimate of fit.estimates) expectNear(estimate, 1, 1e-8);
    for (const residual of fit.residuals) expect(Math.abs(residual)).toBeLessThan(1e-6);
  });

  test('the covariance is the inverse of XᵀX: their product is one on the diagonal, zero beside it', () => {
    const columns = powers.slice(0, 3);
    const { covariance } = fitted(columns, x);
    columns.forEach((left, i) => {
      columns.forEach((_, j) => {
        const sum = columns.reduce((total, middle, k) => {
          const product = left.reduce((part, each, index) => part + each * (middle[index] ?? 0), 0);
          return total + product * (covariance[k]?.[j] ?? Number.NaN);
        }, 0);
        expect(sum).toBeCloseTo(i === j ? 1 : 0, 8);
      });
    });
  });
});

test('residuals are observation less fit: NoInt2 leaves 1/11, 4/11 and −4/11', () => {
  const { residuals } = fitted([[4, 5, 6]], [3, 4, 4]);
  [1 / 11, 4 / 11, -4 / 11].forEach((wanted, index) => {
    expectNear(residuals[index] ?? Number.NaN, wanted, 1e-13);
  });
});

test('columns apart by a million millionth are told as dependent, by a millionth are fitted', () => {
  const apart = (by: number) => leastSquares([ones(3), [1, 1, 1 + by]], [1, 2, 3 + 2e-6]);
  expect(apart(1e-12)).toBeUndefined();
  expect(apart(1e-6)).toBeDefined();
});

test('an estimate’s correlation with itself is one exactly', () => {
  const { covariance } = fitted([ones(4), [0.1, 0.7, 1.3, 2.9]], [1, 2, 4, 8]);
  expect(correlationsOf(covariance).map((row, index) => row[index])).toEqual([1, 1]);
});
