import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { computation } from '../../server/mechanics/computations/capability.ts';
import { describeContract } from './helpers/bad-input.ts';
import { expectNear } from './helpers/near.ts';
import { runner } from './helpers/runner.ts';
import { expectSoundUnderFire } from './helpers/under-fire.ts';

const { run, number, faults } = runner(computation);
const body = { mean: 16, s: 2, lower: 8, upper: 20 };

describe('NIST/SEMATECH e-Handbook, 6.1.6: limits 8 and 20, mean 16, s 2', () => {
  test('cp 1.0, cpk .6667: the nearer limit counts', () => {
    expectNear(number(body, 'cp'), 1);
    expectNear(number(body, 'cpk'), 2 / 3);
    // The farther one would give 1.3333.
    expect(number(body, 'cpk')).toBeLessThan(1);
  });

  test('without n nothing is said of its interval', () => {
    expect(run(body).result).not.toHaveProperty('interval95');
    expect(run(body).assumptions.join()).toContain('no interval');
  });

  test('with n 30: ± 1.96 √(1/270 + .4444/58) (by hand: .209)', () => {
    const half = 1.959963984540054 * Math.sqrt(1 / 270 + 4 / 9 / 58);
    expect(half.toFixed(3)).toBe('0.209');
    expectNear(number({ ...body, n: 30 }, 'interval95.0'), 2 / 3 - half);
    expectNear(number({ ...body, n: 30 }, 'interval95.1'), 2 / 3 + half);
  });
});

test('limits 16.2 and 15.8, mean 15.9, s .1: cpk .33 (a course’s slide), cp .667', () => {
  const slide = { mean: 15.9, s: 0.1, lower: 15.8, upper: 16.2 };
  expect(number(slide, 'cpk').toFixed(2)).toBe('0.33');
  expectNear(number(slide, 'cp'), 2 / 3);
});

test('from values: s with n − 1, and the interval with their number', () => {
  const values = [1.498, 1.502, 1.5, 1.499, 1.501];
  // Σ(x − 1.5)² = 1e-5 by hand, over 4.
  const s = Math.sqrt(1e-5 / 4);
  const given = { values, lower: 1.49, upper: 1.51 };
  expectNear(number(given, 'cp'), 0.02 / (6 * s));
  expect(Math.abs(number(given, 'cp') - 0.02 / (6 * Math.sqrt(1e-5 / 5)))).toBeGreaterThan(0.2);
  expectNear(
    number(given, 'interval95.1'),
    number({ mean: 1.5, s, n: 5, lower: 1.49, upper: 1.51 }, 'interval95.1'),
  );
  expect(run(given).cautions.join()).toContain('Fewer than 25');
});

test('a mean outside its limits has a negative index', () => {
  expectNear(number({ ...body, mean: 21 }, 'cpk'), -1 / 6);
});

test('cpk is cp less how far the mean is off the middle (second route), whatever the unit', () => {
  const at = fc.double({ min: -50, max: 50, noNaN: true });
  fc.assert(
    fc.property(at, fc.double({ min: 0.01, max: 10, noNaN: true }), at, (mean, s, middle) => {
      const half = 6;
      const given = { mean, s, n: 40, lower: middle - half, upper: middle + half };
      const off = Math.abs(mean - middle) / half;
      expect(Math.abs(number(given, 'cpk') - number(given, 'cp') * (1 - off))).toBeLessThan(
        1e-9 * (1 + 100 / s),
      );
      const inMm = {
        mean: mean * 25.4,
        s: s * 25.4,
        n: 40,
        lower: given.lower * 25.4,
        upper: given.upper * 25.4,
      };
      for (const path of ['cp', 'cpk', 'interval95.0', 'interval95.1']) {
        expect(Math.abs(number(inMm, path) - number(given, path))).toBeLessThan(1e-8 * (1 + 100 / s));
      }
    }),
  );
});

test('the interval holds the true index in 19 of 20 lots of fifty (second route)', () => {
  let state = 17;
  const uniform = () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return state / 2 ** 32;
  };
  const normal = () => Math.sqrt(-2 * Math.log(1 - uniform())) * Math.cos(2 * Math.PI * uniform());
  const draws = 2000;
  let held = 0;
  for (let draw = 0; draw < draws; draw += 1) {
    const given = { values: Array.from({ length: 50 }, normal), lower: -5, upper: 4 };
    if (number(given, 'interval95.0') <= 4 / 3 && number(given, 'interval95.1') >= 4 / 3) held += 1;
  }
  expect(Math.abs(held / draws - 0.95)).toBeLessThan(0.02);
});

test.each([
  [{ lower: 8, upper: 20 }, ['/values required']],
  [{ mean: 16, lower: 8, upper: 20 }, ['/s required']],
  [{ s: 2, lower: 8, upper: 20 }, ['/mean required']],
  [{ values: [1], lower: 8, upper: 20 }, ['/values required']],
  [{ values: [1, 1, 1], lower: 8, upper: 20 }, ['/values impossible-input']],
  [{ values: [1, 2], n: 2, lower: 8, upper: 20 }, ['/n not-allowed']],
  [{ values: [1, 2], mean: 1.5, s: 1, lower: 8, upper: 20 }, ['/mean not-allowed', '/s not-allowed']],
  [{ values: Array(2001).fill(1), lower: 8, upper: 20 }, ['/values too-many']],
  [{ ...body, s: 0 }, ['/s out-of-range']],
  [{ ...body, s: -1 }, ['/s out-of-range']],
  [{ ...body, n: 1 }, ['/n out-of-range']],
  [{ ...body, n: 3.5 }, ['/n out-of-range']],
  [{ ...body, upper: 8 }, ['/lower impossible-input', '/upper impossible-input']],
  [{ ...body, upper: 7 }, ['/lower impossible-input', '/upper impossible-input']],
])('refuses %j', (given, refused) => {
  expect(faults(given)).toEqual(refused);
});

test('anything in place of any field is answered or refused at its place', () => {
  expectSoundUnderFire(computation, { ...body, n: 30 });
});

describeContract(computation, { body, numbers: ['mean', 's', 'lower', 'upper'] });
