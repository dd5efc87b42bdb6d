import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  type Contribution,
  type Correlation,
  combine,
  sharedVariance,
} from '../../../server/mechanics/uncertainty/combine.ts';
import { correlationOf } from '../../../server/mechanics/uncertainty/correlate.ts';
import { sampleOf } from '../../../server/mechanics/uncertainty/sample.ts';
import { coverageFactor, studentAbove, Z95 } from '../../../server/mechanics/uncertainty/student.ts';
import {
  digital,
  rectangular,
  triangular,
  trustedTo,
  uShaped,
} from '../../../server/mechanics/uncertainty/type-b.ts';
import { expectNear } from '../helpers/near.ts';

const part = (source: string, u: number, sensitivity: number, degreesOfFreedom?: number): Contribution =>
  degreesOfFreedom === undefined ? { source, u, sensitivity } : { source, u, sensitivity, degreesOfFreedom };

describe('Student’s t, NIST Technical Note 1297, table B.1', () => {
  test.each([
    [1, 12.71, 63.66],
    [2, 4.3, 9.92],
    [3, 3.18, 5.84],
    [4, 2.78, 4.6],
    [5, 2.57, 4.03],
    [10, 2.23, 3.17],
    [16, 2.12, 2.92],
    [19, 2.09, 2.86],
    [30, 2.04, 2.75],
  ])('%d degrees of freedom', (freedom, at95, at99) => {
    expect(Math.abs(coverageFactor(0.95, freedom) - at95)).toBeLessThan(0.005001);
    expect(Math.abs(coverageFactor(0.99, freedom) - at99)).toBeLessThan(0.005001);
  });

  test('closed forms of one and two degrees of freedom, and the normal distribution without limit', () => {
    expectNear(coverageFactor(0.95, 1), Math.tan(Math.PI * 0.475), 1e-13);
    expectNear(coverageFactor(0.95, 2), (2 * 0.475) / Math.sqrt(2 * 0.975 * 0.025), 1e-12);
    expectNear(coverageFactor(0.95, Number.POSITIVE_INFINITY), 1.959963984540054, 1e-12);
    expectNear(coverageFactor(0.95, 1e50), Z95, 1e-12);
    expectNear(coverageFactor(0.99, Number.POSITIVE_INFINITY), 2.5758293035489, 1e-12);
  });

  test('small chances keep their digits', () => {
    // t with P(T > t) = p on 1 degree of freedom is cot(πp).
    expectNear(studentAbove(1e-12, 1), 1 / Math.tan(Math.PI * 1e-12), 1e-9);
  });
});

test('half-widths as JCGM 100:2008, 4.3 and F.2.2.1 have them', () => {
  expectNear(rectangular(0.001), 0.00057735026918963, 1e-12);
  expectNear(triangular(0.001), 0.00040824829046386, 1e-12);
  expectNear(uShaped(0.001), 0.00070710678118655, 1e-12);
  expectNear(digital(1), 0.28867513459481, 1e-12);
});

test('JCGM 100:2008, G.4.2 and table E.1: trusted to 25 %, 8 degrees; 10 %, 50; 50 %, 2', () => {
  expectNear(trustedTo(0.25), 8);
  expectNear(trustedTo(0.1), 50);
  expectNear(trustedTo(0.5), 2);
});

describe('JCGM 100:2008, G.4.1: .25, .57, .82 % on 9, 4 and 14 degrees', () => {
  const combined = combine([part('a', 0.25, 1, 9), part('b', 0.57, 1, 4), part('c', 0.82, 1, 14)]);

  test('u 1.03 %, ν 19.0', () => {
    expect(combined.standardUncertainty.toFixed(2)).toBe('1.03');
    expect(combined.degreesOfFreedom?.toFixed(1)).toBe('19.0');
    expectNear(combined.degreesOfFreedom ?? 0, 18.9987, 1e-5);
  });

  test('18.9987 is truncated to 18, not rounded to 19', () => {
    expectNear(combined.coverageFactor, 2.100922040241038, 1e-12);
    expect(Math.abs(combined.expanded - 2.163)).toBeLessThan(0.001);
    expect(Math.abs(combined.coverageFactor - coverageFactor(0.95, 19))).toBeGreaterThan(0.007);
  });
});

test('JCGM 100:2008, H.1, end gauge: u² 1002 nm², u 32 nm, ν 16, k99 2.92, U99 93 nm', () => {
  // Scatter 13 nm of the mean of five; 10 nm at 95 % on 5 degrees; 20 nm as three deviations, trusted to 25 %.
  const difference = [13 / Math.sqrt(5), 10 / coverageFactor(0.95, 5), 20 / 3].map((u) => u ** 2);
  const [scatter = 0, calibration = 0, systematic = 0] = difference;
  const u = {
    d: Math.sqrt(scatter + calibration + systematic),
    deltaAlpha: rectangular(1e-6),
    deltaTheta: rectangular(0.05),
  };
  const freedom = u.d ** 4 / (scatter ** 2 / 24 + calibration ** 2 / 5 + systematic ** 2 / 8);
  expect(u.d.toFixed(1)).toBe('9.7');
  expect(freedom.toFixed(1)).toBe('25.6');
  const ls = 50_000_623;
  const combined = combine(
    [
      part('standard', 25, 1, 18),
      part('difference', u.d, 1, freedom),
      part('expansion difference', u.deltaAlpha, ls * 0.1, 50),
      part('temperature difference', u.deltaTheta, -ls * 11.5e-6, 2),
    ],
    [],
    0.99,
  );
  expect(combined.standardUncertainty.toFixed(0)).toBe('32');
  expect((combined.standardUncertainty ** 2).toFixed(0)).toBe('1002');
  expect(Math.floor(combined.degreesOfFreedom ?? 0)).toBe(16);
  expect(Math.abs((combined.degreesOfFreedom ?? 0) - 16.75)).toBeLessThan(0.01);
  expect(combined.coverageFactor.toFixed(2)).toBe('2.92');
  expect(Math.abs(combined.expanded - 92.5)).toBeLessThan(0.05);
});

describe('JCGM 100:2008, H.2: resistance, reactance and impedance from correlated readings', () => {
  const voltage = [5.007, 4.994, 5.005, 4.99, 4.999];
  const current = [19.663, 19.639, 19.64, 19.685, 19.678].map((each) => each / 1000);
  const phase = [1.0456, 1.0438, 1.0468, 1.0428, 1.0433];
  const [V, I, phi] = [voltage, current, phase].map((list) => sampleOf(list).mean);
  const [uV, uI, uPhi] = [voltage, current, phase].map((list) => (sampleOf(list).s ?? 0) / Math.sqrt(5));
  const correlations: Correlation[] = [
    { first: 0, second: 1, coefficient: correlationOf(voltage, current) },
    { first: 0, second: 2, coefficient: correlationOf(voltage, phase) },
    { first: 1, second: 2, coefficient: correlationOf(current, phase) },
  ];
  const inputs = (cV: number, cI: number, cPhi: number) => [
    part('voltage', uV ?? 0, cV),
    part('current', uI ?? 0, cI),
    part('phase', uPhi ?? 0, cPhi),
  ];
  if (V === undefined || I === undefined || phi === undefined) throw new Error('no means');
  const Z = V / I;
  const R = Z * Math.cos(phi);
  const X = Z * Math.sin(phi);
  const sensitivities = {
    R: [Math.cos(phi) / I, -R / I, -X],
    X: [Math.sin(phi) / I, -X / I, R],
    Z: [1 / I, -Z / I, 0],
  } as const;
  const of = ([a, b, c]: readonly [number, number, number]) => combine(inputs(a, b, c), correlations);
  const together = (
    one: readonly [number, number, number],
    other: readonly [number, number, number],
  ): number => {
    // r from the variance of the sum: u²(a + b) = u²(a) + u²(b) + 2 r u(a) u(b).
    const sum = of([one[0] + other[0], one[1] + other[1], one[2] + other[2]]).standardUncertainty;
    const [a, b] = [of(one).standardUncertainty, of(other).standardUncertainty];
    return (sum ** 2 - a ** 2 - b ** 2) / (2 * a * b);
  };

  test('correlations −.36, .86, −.65', () => {
    expect(correlations.map(({ coefficient }) => coefficient.toFixed(2))).toEqual(['-0.36', '0.86', '-0.65']);
  });

  test('R 127.732 ± .071, X 219.847 ± .295, Z 254.260 ± .236', () => {
    expect([R, X, Z].map((each) => each.toFixed(3))).toEqual(['127.732', '219.847', '254.260']);
    expectNear(of(sensitivities.R).standardUncertainty, 0.071071, 1e-5);
    // The publication prints .295, cut off; .295582 calculated again.
    expectNear(of(sensitivities.X).standardUncertainty, 0.295582, 1e-5);
    expectNear(of(sensitivities.Z).standardUncertainty, 0.236336, 1e-5);
  });

  test('Z = V/I without its correlation would have .2041, which is not the answer', () => {
    const [a, b, c] = sensitivities.Z;
    expect(combine(inputs(a, b, c)).standardUncertainty.toFixed(4)).toBe('0.2041');
  });

  test('results go together by −.588, −.485 and .993', () => {
    expect(together(sensitivities.R, sensitivities.X).toFixed(3)).toBe('-0.588');
    expect(together(sensitivities.R, sensitivities.Z).toFixed(3)).toBe('-0.485');
    expect(together(sensitivities.X, sensitivities.Z).toFixed(3)).toBe('0.993');
  });
});

describe('combining in general', () => {
  const amount = fc.double({ min: 1e-6, max: 10, noNaN: true });

  test('errors wholly shared add as they are, or cancel', () => {
    fc.assert(
      fc.property(amount, amount, (a, b) => {
        const both = [part('a', a, 1), part('b', b, 1)];
        const shared = [{ first: 0, second: 1, coefficient: 1 }];
        expectNear(combine(both, shared).standardUncertainty, a + b);
        const against = [part('a', a, 1), part('b', b, -1)];
        expect(Math.abs(combine(against, shared).standardUncertainty - Math.abs(a - b))).toBeLessThan(1e-6);
      }),
    );
  });

  test('one contribution keeps its own degrees of freedom, to the whole', () => {
    fc.assert(
      fc.property(amount, amount, fc.integer({ min: 1, max: 200 }), (u, c, freedom) => {
        const combined = combine([part('only', u, c, freedom)]);
        expectNear(combined.degreesOfFreedom ?? 0, freedom, 1e-12);
        expect(combined.coverageFactor).toBe(coverageFactor(0.95, freedom));
      }),
    );
  });

  test('independent degrees of freedom lie between the least and their sum', () => {
    const parts = fc.array(fc.record({ u: amount, freedom: fc.integer({ min: 1, max: 60 }) }), {
      minLength: 1,
      maxLength: 8,
    });
    fc.assert(
      fc.property(parts, (list) => {
        const combined = combine(list.map(({ u, freedom }) => part('x', u, 1, freedom)));
        const freedoms = list.map(({ freedom }) => freedom);
        expect(combined.degreesOfFreedom).toBeGreaterThanOrEqual(Math.min(...freedoms) * (1 - 1e-9));
        expect(combined.degreesOfFreedom).toBeLessThanOrEqual(
          freedoms.reduce((sum, each) => sum + each, 0) * (1 + 1e-9),
        );
      }),
    );
  });

  test('nothing uncertain is certain, and has no limit', () => {
    expect(combine([part('a', 0, 1, 4)])).toEqual({
      standardUncertainty: 0,
      coverageFactor: coverageFactor(0.95, Number.POSITIVE_INFINITY),
      expanded: 0,
    });
  });

  test('a correlation that names nothing is refused', () => {
    expect(() => sharedVariance([part('a', 1, 1)], [{ first: 0, second: 1, coefficient: 1 }])).toThrow(
      RangeError,
    );
  });
});
