import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { computation } from '../../server/mechanics/computations/ratio-through-lift.ts';
import { describeContract } from './helpers/bad-input.ts';
import { expectNear } from './helpers/near.ts';
import { inches, lbf, lbfPerInch, mm } from './helpers/quantities.ts';
import { runner } from './helpers/runner.ts';
import { expectSoundUnderFire } from './helpers/under-fire.ts';

const { run, number, faults, refused } = runner(computation);

const station = (lobeLift: number, valveLift: number) => ({
  lobeLift: inches(lobeLift),
  valveLift: inches(valveLift),
});
const lobes = [0.1, 0.15, 0.2, 0.25, 0.3, 0.35];
const valves = [0.1432, 0.2181, 0.2934, 0.3679, 0.4433, 0.518];
const pairs = lobes.map((lobe, index) => station(lobe, valves[index] ?? 0));
const body = { pairs, readingUncertainty: inches(0.0015) };

describe('a light pass', () => {
  test('slope 1.49948571 without weights (calculated apart); the lash left in is what the line lacks at zero', () => {
    expectNear(number(body, 'ratio.value'), 1.49948571, 1e-8);
    // Mean of V less slope times mean of L, both from the table.
    expectNear(number(body, 'lashLeftIn.value'), 1.49948571 * 0.225 - 1.9839 / 6, 1e-6);
    expect(number(body, 'lashLeftIn.value')).toBeGreaterThan(0.006);
  });

  test('the mean of valve over lobe, 1.463711, and the line through the origin, 1.46747788, are not it', () => {
    expect(Math.abs(number(body, 'ratio.value') - 1.463711)).toBeGreaterThan(0.03);
    expect(Math.abs(number(body, 'ratio.value') - 1.46747788)).toBeGreaterThan(0.03);
  });

  test('uncertainties by the textbook formulas of a line, s = u √(1 + R²), not from the residuals', () => {
    const s = 0.0015 * Math.sqrt(1 + 1.49948571 ** 2);
    const square = lobes.reduce((sum, lobe) => sum + (lobe - 0.225) ** 2, 0);
    expectNear(number(body, 'ratio.standardUncertainty'), s / Math.sqrt(square), 1e-8);
    expectNear(
      number(body, 'lashLeftIn.standardUncertainty'),
      s * Math.sqrt(1 / 6 + 0.225 ** 2 / square),
      1e-8,
    );
    // JCGM 100, H.3: the two go together by the mean over the root mean square; both fall with lash, so it is positive.
    const meanSquare = lobes.reduce((sum, lobe) => sum + lobe ** 2, 0) / 6;
    expectNear(number(body, 'correlations.0.1'), 0.225 / Math.sqrt(meanSquare));
    expectNear(number(body, 'correlations.1.0'), 0.225 / Math.sqrt(meanSquare));
  });

  test('residuals add up to zero; steps are told; give is not', () => {
    const residuals = lobes.map((_, index) => number(body, `residuals.${index}`));
    expect(Math.abs(residuals.reduce((sum, each) => sum + each, 0))).toBeLessThan(1e-15);
    expectNear(number(body, 'segmentRatios.0'), 0.0749 / 0.05);
    expectNear(number(body, 'segmentRatios.4'), 0.0747 / 0.05);
    expect(run(body).result).not.toHaveProperty('segmentRatios.5');
    expect(run(body).result).not.toHaveProperty('compliance');
    expect(run(body).result).toMatchObject({ identifiable: ['ratio', 'lashLeftIn'] });
  });

  test('a line that starts above zero has a negative lash', () => {
    const above = lobes.map((lobe) => station(lobe, 1.5 * lobe + 0.003));
    expectNear(number({ ...body, pairs: above }, 'lashLeftIn.value'), -0.003, 1e-9);
  });
});

const second = { springSeatLoad: lbf(130), springRate: lbfPerInch(350) };

/** Lift of a train that gives: V = (R·L − g − C·S)/(1 + C·k), on each spring. */
function bothPasses(R: number, g: number, C: number, at: readonly number[], S = 130, k = 350) {
  return {
    pairs: at.map((lobe) => station(lobe, R * lobe - g)),
    readingUncertainty: inches(0.0015),
    secondPass: {
      springSeatLoad: lbf(S),
      springRate: lbfPerInch(k),
      pairs: at.map((lobe) => station(lobe, (R * lobe - g - C * S) / (1 + C * k))),
    },
  };
}

describe('a second pass under the running spring', () => {
  test('1.6, .004 in and 5e-5 in/lbf come back from lifts made of them', () => {
    const both = bothPasses(1.6, 0.004, 5e-5, lobes);
    expectNear(number(both, 'ratio.value'), 1.6);
    expectNear(number(both, 'lashLeftIn.value'), 0.004, 1e-8);
    expectNear(number(both, 'compliance.value'), 5e-5, 1e-8);
    expect(run(both).result).toMatchObject({ identifiable: ['ratio', 'lashLeftIn', 'compliance'] });
  });

  test('at .350 with nothing left in: .543980 in under 130 lbf and 350 lbf/in (calculated by two routes)', () => {
    const both = bothPasses(1.6, 0, 5e-5, lobes);
    expectNear(both.secondPass.pairs.at(-1)?.valveLift.value ?? 0, 0.54398, 1e-6);
    expectNear(number(both, 'compliance.value'), 5e-5, 1e-8);
  });

  test('the running pass alone has slope 1.572482 and mimics .006388 in of lash', () => {
    const running = bothPasses(1.6, 0, 5e-5, lobes).secondPass.pairs;
    const alone = { ...body, pairs: running };
    expectNear(number(alone, 'ratio.value'), 1.572482, 1e-6);
    expectNear(number(alone, 'lashLeftIn.value'), 0.006388, 1e-4);
  });

  test('load taken as rate times lift alone, without the seat, would give another give', () => {
    const both = bothPasses(1.6, 0.004, 5e-5, lobes);
    const seatless = { ...both, secondPass: { ...both.secondPass, springSeatLoad: lbf(0) } };
    expect(Math.abs(number(seatless, 'compliance.value') - 5e-5)).toBeGreaterThan(1e-6);
  });

  test('random trains come back, in millimetres and newtons too', () => {
    const R = fc.double({ min: 1.2, max: 2, noNaN: true });
    const g = fc.double({ min: -0.01, max: 0.02, noNaN: true });
    const C = fc.double({ min: 1e-6, max: 1e-4, noNaN: true });
    fc.assert(
      fc.property(R, g, C, fc.integer({ min: 3, max: 12 }), (ratio, lash, give, count) => {
        const at = Array.from({ length: count }, (_, index) => 0.1 + (0.3 * index) / count);
        const both = bothPasses(ratio, lash, give, at);
        const metric = (list: typeof both.pairs) =>
          list.map(({ lobeLift, valveLift }) => ({
            lobeLift: mm(lobeLift.value * 25.4),
            valveLift: mm(valveLift.value * 25.4),
          }));
        const inMm = {
          ...both,
          pairs: metric(both.pairs),
          secondPass: { ...both.secondPass, pairs: metric(both.secondPass.pairs) },
        };
        for (const given of [both, inMm]) {
          expect(Math.abs(number(given, 'ratio.value') - ratio)).toBeLessThan(1e-9);
          expect(Math.abs(number(given, 'lashLeftIn.value') - lash)).toBeLessThan(1e-9);
          expect(Math.abs(number(given, 'compliance.value') - give)).toBeLessThan(1e-11);
        }
        // mm/N from in/lbf: 25.4 over 4.4482216152605.
        expectNear(number(both, 'compliance.value', 'metric'), (give * 25.4) / 4.4482216152605, 1e-5);
      }),
    );
  });
});

test('drawn again and again, the estimates spread as their uncertainties say (second route)', () => {
  // Normal numbers by twelve uniform ones, the same at every run.
  let state = 3;
  const uniform = () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return state / 2 ** 32;
  };
  const normal = () => Array.from({ length: 12 }, uniform).reduce((sum, each) => sum + each, -6);
  const draws = 1500;
  const found = Array.from({ length: draws }, () => {
    const drawn = lobes.map((lobe) =>
      station(lobe + 0.0015 * normal(), 1.6 * lobe - 0.004 + 0.0015 * normal()),
    );
    return number({ ...body, pairs: drawn }, 'ratio.value');
  });
  const mean = found.reduce((sum, each) => sum + each, 0) / draws;
  const spread = Math.sqrt(found.reduce((sum, each) => sum + (each - mean) ** 2, 0) / (draws - 1));
  const told = number(
    { ...body, pairs: lobes.map((lobe) => station(lobe, 1.6 * lobe - 0.004)) },
    'ratio.standardUncertainty',
  );
  // The spread of 1 500 draws is known to 2 %; lobe errors in the columns take a little more.
  expectNear(spread, told, 0.08);
});

describe('what it refuses and says', () => {
  test.each([
    [{ pairs: pairs.slice(0, 2) }, ['/pairs required']],
    [
      { pairs: [station(0.1, 0.15), station(0.1, 0.2), station(0.2, 0.3)] },
      ['/pairs/1/lobeLift impossible-input'],
    ],
    [
      { pairs: [station(0.1, 0.15), station(0.2, 0.14), station(0.3, 0.4)] },
      ['/pairs/1/valveLift impossible-input'],
    ],
    [
      { pairs: pairs.toReversed().slice(0, 3) },
      [
        '/pairs/1/lobeLift impossible-input',
        '/pairs/1/valveLift impossible-input',
        '/pairs/2/lobeLift impossible-input',
        '/pairs/2/valveLift impossible-input',
      ],
    ],
    [
      { pairs: [station(0.1, 0.15), station(0.2, -0.3), station(0.3, 0.4)] },
      ['/pairs/1/valveLift out-of-range'],
    ],
    [{ pairs: [...pairs.slice(0, 2), { lobeLift: inches(0.2) }] }, ['/pairs/2/valveLift required']],
    [{ pairs: 'nonsense' }, ['/pairs not-allowed']],
    [{ pairs: Array(2001).fill(pairs[0]) }, ['/pairs too-many']],
    [{ pairs: [station(0.001, 10), station(0.002, 20), station(0.003, 30)] }, ['/pairs impossible-input']],
    [{ secondPass: { pairs, springSeatLoad: lbf(130) } }, ['/secondPass/springRate required']],
    [
      { secondPass: { pairs, ...second, springRate: lbfPerInch(-1) } },
      ['/secondPass/springRate out-of-range'],
    ],
    [{ secondPass: { pairs: pairs.slice(0, 1), ...second } }, ['/secondPass/pairs required']],
    [
      { secondPass: { pairs: [...pairs, station(0.3, 0.6)], ...second } },
      ['/secondPass/pairs/6/lobeLift impossible-input'],
    ],
  ])('%#', (change, refused) => {
    expect(faults({ ...body, ...change })).toEqual(refused);
  });

  test.each([
    [99.9, true],
    [100.1, false],
    [1e-6, true],
  ])('a line of %d to one: answered %s', (slope, answered) => {
    const line = [0.002, 0.004, 0.006].map((lobe) => station(lobe, slope * lobe));
    expect(refused({ ...body, pairs: line })).toEqual(answered ? [] : ['/pairs impossible-input']);
  });

  test('of two passes both are blamed', () => {
    const steep = bothPasses(150, 0, 0, [0.001, 0.002, 0.003]);
    expect(faults(steep)).toEqual(['/pairs impossible-input', '/secondPass impossible-input']);
  });

  test('a station off the line is pointed to', () => {
    const off = pairs.map((each, index) => (index === 3 ? station(0.25, 0.4) : each));
    expect(run({ ...body, pairs: off }).cautions.join()).toContain('off the line');
    expect(run(body).cautions.join()).not.toContain('off the line');
  });

  test('anything in place of any field is answered or refused at its place', () => {
    expectSoundUnderFire(computation, { ...body, secondPass: { pairs, ...second } });
  });

  test('2 000 stations are fitted', () => {
    const many = Array.from({ length: 2000 }, (_, index) => station(0.1 + index / 8000, 0.15 + index / 5000));
    expectNear(number({ ...body, pairs: many }, 'ratio.value'), 1.6);
  });
});

describeContract(computation, { body, quantities: { readingUncertainty: 'in' } });
