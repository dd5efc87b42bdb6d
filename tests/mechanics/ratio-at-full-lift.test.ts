import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { computation } from '../../server/mechanics/computations/ratio-at-full-lift.ts';
import { describeContract } from './helpers/bad-input.ts';
import { expectNear } from './helpers/near.ts';
import { inches, mm } from './helpers/quantities.ts';
import { partOf, runner } from './helpers/runner.ts';
import { expectSoundUnderFire } from './helpers/under-fire.ts';

const { run, number, faults } = runner(computation);

const V = [0.5251, 0.5248, 0.5252, 0.5249, 0.525];
const L = [0.3501, 0.3499, 0.35, 0.3502, 0.3498];
const lift = (readings: readonly number[], errorLimit = 0.001, graduation = 0.0005) => ({
  readings: readings.map(inches),
  graduation: inches(graduation),
  errorLimit: inches(errorLimit),
});
const body = { valveLift: lift(V), lobeLift: lift(L), sameIndicator: false, spring: 'light' };

interface Line {
  readonly source: string;
  readonly contribution: number;
  readonly share: number;
}

function budgetOf(given: unknown): Line[] {
  const budget = partOf(run(given).result, 'budget');
  if (!Array.isArray(budget)) throw new Error('no budget');
  return budget.map((_, index) => ({
    source: String(partOf(budget, `${index}.source`)),
    contribution: Number(partOf(budget, `${index}.contribution`)),
    share: Number(partOf(budget, `${index}.share`)),
  }));
}

describe('ratio of two lifts, calculated apart from this code', () => {
  test('(i) five passes each, graduation .0005, limits ±.001: 1.5, u .003086894, ν 35960, U .006050', () => {
    expectNear(number(body, 'ratio'), 1.5);
    expectNear(number(body, 'standardUncertainty'), 0.003086894, 2e-7);
    expect(Math.floor(number(body, 'degreesOfFreedom'))).toBe(35960);
    expectNear(number(body, 'interval95.1') - 1.5, 0.00605, 1e-4);
    expectNear(1.5 - number(body, 'interval95.0'), 0.00605, 1e-4);
  });

  test('(ii) without the limits: u .000827873, ν 186.04, k 1.97280, U .001633', () => {
    const resolved = { ...body, valveLift: lift(V, 0), lobeLift: lift(L, 0) };
    expectNear(number(resolved, 'standardUncertainty'), 0.000827873, 1e-6);
    expectNear(number(resolved, 'degreesOfFreedom'), 186.04, 1e-4);
    expectNear(number(resolved, 'coverageFactor'), 1.972800113995442);
    expectNear(number(resolved, 'interval95.1') - 1.5, 0.001633, 1e-3);
  });

  test('(iii) the whole graduation as half-width would make the resolution twice as wide', () => {
    const [, resolution] = budgetOf(body);
    // .0005 graduation: half-width .00025, over √3, over .350.
    expectNear(resolution?.contribution ?? 0, 0.00025 / Math.sqrt(3) / 0.35);
  });

  test('(iv) .5250/.3500 with ±.001 each alone: u .002973809 (Monte Carlo .0029741)', () => {
    const fine = { ...body, valveLift: lift([0.525], 0.001, 1e-9), lobeLift: lift([0.35], 0.001, 1e-9) };
    expectNear(number(fine, 'standardUncertainty'), 0.002973809, 2e-7);
    expect(run(fine).result).not.toHaveProperty('degreesOfFreedom');
    expectNear(number(fine, 'coverageFactor'), 1.959963984540054, 1e-12);
  });

  test('one indicator for both: half of what is shared cancels', () => {
    const one = { value: inches(0.35), errorLimit: inches(0.001), source: 'indicator' };
    const fine = { ...body, valveLift: lift([0.525], 0.001, 1e-9), lobeLift: one, sameIndicator: true };
    // u² = (u/L)²(1 + R² − 2·.5·R): by hand.
    const u = 0.001 / Math.sqrt(3) / 0.35;
    expectNear(number(fine, 'standardUncertainty'), u * Math.sqrt(1 + 1.5 ** 2 - 1.5), 1e-8);
    // Were the whole of it shared, (v) and (vi), only |R − 1|·u/L = .000824786 would be left.
    expect(number(fine, 'standardUncertainty')).toBeGreaterThan(0.002);
  });

  test.each(['card', 'caliper'])('a %s shares nothing with the indicator at the valve', (source) => {
    const lobeLift = { value: inches(0.35), errorLimit: inches(0.0025), source };
    const apart = { ...body, lobeLift };
    expectNear(
      number({ ...apart, sameIndicator: true }, 'standardUncertainty'),
      number(apart, 'standardUncertainty'),
      1e-15,
    );
    // The limit alone: no resolution, no scatter of its own.
    expect(budgetOf(apart).map(({ source: from }) => from)).toEqual([
      'valve lift, repeatability',
      'valve lift, graduation',
      'valve lift, error limit',
      'lobe lift, error limit',
    ]);
  });
});

describe('the nominals', () => {
  const verdicts = (nominals: readonly number[], given: object = body) => {
    const judged = partOf(run({ ...given, nominals }).result, 'nominals');
    return Array.isArray(judged) ? judged.map((_, index) => partOf(judged, `${index}.verdict`)) : judged;
  };

  test('alone inside the interval agrees, outside differs', () => {
    expect(verdicts([1.5, 1.6])).toEqual(['agrees', 'differs']);
    expect(verdicts([1.6])).toEqual(['differs']);
    expect(verdicts([])).toEqual([]);
  });

  test('two inside can’t be told apart; the same one twice is one', () => {
    expect(verdicts([1.5, 1.505, 1.52])).toEqual(['cannot-tell', 'cannot-tell', 'differs']);
    expect(verdicts([1.5, 1.5])).toEqual(['agrees', 'agrees']);
  });

  test('each says the valve lift it needs: 1.6 on a .350 lobe is .560 in, 14.224 mm', () => {
    expectNear(number({ ...body, nominals: [1.6] }, 'nominals.0.needsValveLift'), 0.56);
    expectNear(number({ ...body, nominals: [1.6] }, 'nominals.0.needsValveLift', 'metric'), 14.224);
  });

  test('left out, nothing is said of any', () => {
    expect(run(body).result).not.toHaveProperty('nominals');
  });
});

const limit = fc.double({ min: 1e-4, max: 0.003, noNaN: true });
const valveAt = fc.double({ min: 0.3, max: 0.8, noNaN: true });
const lobeAt = fc.double({ min: 0.2, max: 0.45, noNaN: true });
const scatter = fc.array(fc.integer({ min: -8, max: 8 }), { minLength: 1, maxLength: 6 });

test('shares add up to one and squares to the variance; millimetres give the same', () => {
  fc.assert(
    fc.property(valveAt, lobeAt, scatter, scatter, limit, fc.boolean(), (v, l, sv, sl, errorLimit, same) => {
      const at = (middle: number, steps: readonly number[]) => steps.map((step) => middle + step * 1e-4);
      const inInches = {
        valveLift: lift(at(v, sv), errorLimit),
        lobeLift: lift(at(l, sl), errorLimit),
        sameIndicator: same,
        spring: 'light',
      };
      const metric = (from: ReturnType<typeof lift>) => ({
        readings: from.readings.map(({ value }) => mm(value * 25.4)),
        graduation: mm(from.graduation.value * 25.4),
        errorLimit: mm(from.errorLimit.value * 25.4),
      });
      const inMm = {
        ...inInches,
        valveLift: metric(inInches.valveLift),
        lobeLift: metric(inInches.lobeLift),
      };
      const lines = budgetOf(inInches);
      expectNear(
        lines.reduce((sum, { share }) => sum + share, 0),
        1,
      );
      const variance = lines.reduce(
        (sum, { contribution, share }) => sum + Math.sign(share) * contribution ** 2,
        0,
      );
      expectNear(Math.sqrt(variance), number(inInches, 'standardUncertainty'));
      for (const path of ['ratio', 'standardUncertainty', 'coverageFactor', 'interval95.0', 'interval95.1']) {
        expectNear(number(inMm, path), number(inInches, path), 1e-9);
      }
    }),
  );
});

/** Uniform numbers that are the same at every run. */
function uniform(seed: number): () => number {
  let state = seed;
  return () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return state / 2 ** 32;
  };
}

test('a Monte Carlo of 200 000 draws has the same spread, second route', () => {
  const next = uniform(7);
  const within = (half: number) => (2 * next() - 1) * half;
  let [sum, squares] = [0, 0];
  const draws = 200_000;
  for (let draw = 0; draw < draws; draw += 1) {
    const ratio = (0.525 + within(0.001) + within(0.00025)) / (0.35 + within(0.001) + within(0.00025));
    sum += ratio - 1.5;
    squares += (ratio - 1.5) ** 2;
  }
  const spread = Math.sqrt(squares / draws - (sum / draws) ** 2);
  const once = { ...body, valveLift: lift([0.525]), lobeLift: lift([0.35]) };
  expectNear(number(once, 'standardUncertainty'), spread, 0.01);
});

describe('what it says', () => {
  test('a running-spring ratio is not set against a stamp', () => {
    expect(run({ ...body, spring: 'running' }).cautions.join()).toContain('stamp');
    expect(run(body).cautions.join()).not.toContain('stamp');
  });

  test('passes that fall each time are a lifter sinking, not a mean', () => {
    const sinking = { ...body, valveLift: lift([0.528, 0.523, 0.517]) };
    expect(run(sinking).cautions.join()).toContain('sinking');
    expect(run(body).cautions.join()).not.toContain('sinking');
  });

  test('readings all alike add no scatter and no limit of degrees', () => {
    const alike = { ...body, valveLift: lift([0.525, 0.525, 0.525]), lobeLift: lift([0.35, 0.35]) };
    expect(run(alike).result).not.toHaveProperty('degreesOfFreedom');
  });
});

describe('bad input', () => {
  test.each([
    [
      { lobeLift: {} },
      ['/lobeLift/errorLimit required', '/lobeLift/graduation required', '/lobeLift/readings required'],
    ],
    [{ lobeLift: { value: inches(0.35), errorLimit: inches(0.001) } }, ['/lobeLift/source required']],
    [
      { lobeLift: { value: inches(0.35), errorLimit: inches(0.001), source: 'guess' } },
      ['/lobeLift/source not-allowed'],
    ],
    [{ lobeLift: { ...lift(L), value: inches(0.35) } }, ['/lobeLift/value not-allowed']],
    [{ lobeLift: lift([]) }, ['/lobeLift/readings required']],
    [{ valveLift: { ...lift(V), readings: [inches(0.5), 'NaN'] } }, ['/valveLift/readings/1 not-a-number']],
    [{ valveLift: lift([-0.5]) }, ['/valveLift/readings/0 out-of-range']],
    [{ valveLift: lift(V, -0.001) }, ['/valveLift/errorLimit out-of-range']],
    [{ valveLift: lift(V, 0.001, 0) }, ['/valveLift/graduation out-of-range']],
    [{ valveLift: lift(Array(2001).fill(0.5)) }, ['/valveLift/readings too-many']],
    [{ valveLift: lift(Array(100_000).fill(0.5)) }, ['/valveLift/readings too-many']],
    [
      { valveLift: lift([50]), lobeLift: lift([0.1]) },
      ['/lobeLift impossible-input', '/valveLift impossible-input'],
    ],
    [
      { nominals: [1.5, 0, 200, 'x'] },
      ['/nominals/1 out-of-range', '/nominals/2 impossible-input', '/nominals/3 not-a-number'],
    ],
    [{ sameIndicator: 'yes' }, ['/sameIndicator not-allowed']],
    [{ spring: 'stiff' }, ['/spring not-allowed']],
  ])('%#', (change, refused) => {
    expect(faults({ ...body, ...change })).toEqual(refused);
  });

  test('a list of one unit is taken, and 2 000 readings', () => {
    const many = { ...lift(V), readings: { values: Array(2000).fill(0.525), unit: 'in' } };
    expectNear(number({ ...body, valveLift: many }, 'ratio'), 1.5);
  });

  test('anything in place of any field is answered or refused at its place', () => {
    expectSoundUnderFire(computation, { ...body, nominals: [1.5] });
  });
});

describeContract(computation, { body });
