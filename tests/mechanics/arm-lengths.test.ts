import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { computation } from '../../server/mechanics/computations/arm-lengths.ts';
import { describeContract } from './helpers/bad-input.ts';
import { expectNear } from './helpers/near.ts';
import { inches, mm } from './helpers/quantities.ts';
import { partOf, runner } from './helpers/runner.ts';
import { expectSoundUnderFire } from './helpers/under-fire.ts';

const { run, number, faults } = runner(computation);
const arm = (value: number, errorLimit = 0.005) => ({
  value: inches(value),
  errorLimit: inches(errorLimit),
});
const body = { pivotToTip: arm(1.48), pivotToCup: arm(0.925) };
const Z = 1.959963984540054;

/**
 * Standard deviation of a quotient of two lengths, each anywhere within its limit alike, without linearising:
 * E[1/X] = ln((b + e)/(b − e))/(2e), E[1/X²] = 1/(b² − e²), E[A²] = a² + e²/3 (integrals of elementary calculus).
 */
function exactSpread(tip: number, tipLimit: number, cup: number, cupLimit: number): number {
  const inverse = cupLimit === 0 ? 1 / cup : Math.log((cup + cupLimit) / (cup - cupLimit)) / (2 * cupLimit);
  const inverseSquare = 1 / (cup ** 2 - cupLimit ** 2);
  return Math.sqrt((tip ** 2 + tipLimit ** 2 / 3) * inverseSquare - (tip * inverse) ** 2);
}

describe('the ratio of two arms', () => {
  test('1.48 over .925 is 1.6; ±.005 on each gives ±.0102 by quadrature of the limits (by hand)', () => {
    expectNear(number(body, 'ratio'), 1.6);
    expect(number(body, 'standardUncertainty') * Math.sqrt(3)).toBeCloseTo(0.0102, 4);
    expectNear(number(body, 'interval95.1') - 1.6, Z * number(body, 'standardUncertainty'), 1e-9);
    expectNear(1.6 - number(body, 'interval95.0'), Z * number(body, 'standardUncertainty'), 1e-9);
  });

  test('one exact length leaves the other alone: u = limit/√3/C, or R of it', () => {
    const tip = { ...body, pivotToCup: arm(0.925, 0) };
    expectNear(number(tip, 'standardUncertainty'), 0.005 / Math.sqrt(3) / 0.925);
    const cup = { ...body, pivotToTip: arm(1.48, 0) };
    expectNear(number(cup, 'standardUncertainty'), (1.6 * 0.005) / Math.sqrt(3) / 0.925);
    const exact = { pivotToTip: arm(1.48, 0), pivotToCup: arm(0.925, 0) };
    expect(number(exact, 'standardUncertainty')).toBe(0);
    expect(partOf(run(exact).result, 'interval95')).toEqual([number(exact, 'ratio'), number(exact, 'ratio')]);
  });

  const lengths = fc.double({ min: 0.5, max: 3, noNaN: true });
  const limits = fc.double({ min: 1e-4, max: 0.02, noNaN: true });

  test('any arms: within a thousandth of the exact spread of the quotient, and alike in millimetres', () => {
    fc.assert(
      fc.property(lengths, lengths, limits, limits, (tip, cup, tipLimit, cupLimit) => {
        const given = { pivotToTip: arm(tip, tipLimit), pivotToCup: arm(cup, cupLimit) };
        // A variance as the difference of two squares has no more than 1e-15/u² of figures to give.
        const exact = exactSpread(tip, tipLimit, cup, cupLimit);
        expectNear(number(given, 'standardUncertainty'), exact, 2e-3);
        const inMm = {
          pivotToTip: { value: mm(tip * 25.4), errorLimit: mm(tipLimit * 25.4) },
          pivotToCup: { value: mm(cup * 25.4), errorLimit: mm(cupLimit * 25.4) },
        };
        for (const path of ['ratio', 'standardUncertainty', 'interval95.0', 'interval95.1']) {
          expectNear(number(inMm, path), number(given, path));
        }
        expect(number(given, 'interval95.0')).toBeGreaterThan(0);
      }),
    );
  });

  test('arms that change places have the inverse ratio and the same relative uncertainty', () => {
    fc.assert(
      fc.property(lengths, lengths, limits, limits, (tip, cup, tipLimit, cupLimit) => {
        const one = { pivotToTip: arm(tip, tipLimit), pivotToCup: arm(cup, cupLimit) };
        const other = { pivotToTip: one.pivotToCup, pivotToCup: one.pivotToTip };
        expectNear(number(one, 'ratio') * number(other, 'ratio'), 1);
        expectNear(
          number(one, 'standardUncertainty') / number(one, 'ratio'),
          number(other, 'standardUncertainty') / number(other, 'ratio'),
        );
      }),
    );
  });
});

describe('the nominals', () => {
  const verdicts = (nominals: readonly number[], limit = 0.005) => {
    const given = { pivotToTip: arm(1.48, limit), pivotToCup: arm(0.925, limit), nominals };
    const judged = partOf(run(given).result, 'nominals');
    return Array.isArray(judged) ? judged.map((_, index) => partOf(judged, `${index}.verdict`)) : judged;
  };

  test('alone inside agrees, outside differs, two inside can’t be told apart', () => {
    expect(verdicts([1.5, 1.6])).toEqual(['differs', 'agrees']);
    expect(verdicts([1.6, 1.605])).toEqual(['cannot-tell', 'cannot-tell']);
    expect(verdicts([1.6, 1.6])).toEqual(['agrees', 'agrees']);
    expect(verdicts([1.5, 1.6, 1.7], 0.04)).toEqual(['differs', 'agrees', 'differs']);
    expect(verdicts([1.55, 1.6, 1.65], 0.04)).toEqual(['cannot-tell', 'cannot-tell', 'cannot-tell']);
    expect(verdicts([])).toEqual([]);
    expect(run(body).result).not.toHaveProperty('nominals');
  });

  test('each says the cup arm it needs: 1.48 over 1.5 is .98667 in, 25.0613 mm', () => {
    expectNear(number({ ...body, nominals: [1.5] }, 'nominals.0.needsPivotToCup'), 1.48 / 1.5);
    expectNear(
      number({ ...body, nominals: [1.5] }, 'nominals.0.needsPivotToCup', 'metric'),
      (1.48 / 1.5) * 25.4,
    );
  });
});

describe('what can’t be', () => {
  test('a limit of half its length or more, each at its own place', () => {
    expect(faults({ ...body, pivotToTip: arm(1, 0.5) })).toEqual(['/pivotToTip/errorLimit impossible-input']);
    expect(faults({ pivotToTip: arm(1, 2), pivotToCup: arm(0.001) })).toEqual([
      '/pivotToCup/errorLimit impossible-input',
      '/pivotToTip/errorLimit impossible-input',
    ]);
    expect(number({ ...body, pivotToTip: arm(1, 0.4999) }, 'interval95.0')).toBeGreaterThan(0);
  });

  test('a ratio above 100', () => {
    expect(faults({ pivotToTip: arm(10, 0), pivotToCup: arm(0.09, 0) })).toEqual([
      '/pivotToCup/value impossible-input',
      '/pivotToTip/value impossible-input',
    ]);
  });

  test('each fault inside an arm is told at its own place', () => {
    expect(faults({ ...body, pivotToTip: inches(1.48) })).toEqual([
      '/pivotToTip/errorLimit required',
      '/pivotToTip/unit unknown-field',
      '/pivotToTip/value wrong-dimension',
    ]);
    expect(faults({ ...body, pivotToCup: { value: inches(0), errorLimit: inches(-1) } })).toEqual([
      '/pivotToCup/errorLimit out-of-range',
      '/pivotToCup/value out-of-range',
    ]);
    expect(faults({ ...body, nominals: [1.6, 0, 101, '1.5'] })).toEqual([
      '/nominals/1 out-of-range',
      '/nominals/2 impossible-input',
      '/nominals/3 not-a-number',
    ]);
  });

  test('whatever is sent', () => expectSoundUnderFire(computation, { ...body, nominals: [1.6] }));
});

test('it says what it is the ratio of', () => {
  const said = run(body).assumptions.join();
  expect(said).toContain('centre to centre');
  expect(said).toContain('mid-lift');
  expect(said).toContain('not the ratio on the engine');
});

describeContract(computation, { body: { ...body, nominals: [1.6] }, optional: ['nominals'] });
