import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import table from '../../seeds/allowances.json' with { type: 'json' };
import { computation } from '../../server/mechanics/computations/deflection.ts';
import { describeContract } from './helpers/bad-input.ts';
import { expectNear } from './helpers/near.ts';
import { inches, mm } from './helpers/quantities.ts';
import { partOf, runner } from './helpers/runner.ts';
import { expectSoundUnderFire } from './helpers/under-fire.ts';

const { run, number, faults } = runner(computation);
const body = { lightLift: inches(0.56), runningLift: inches(0.544) };
const against = (more: object) => partOf(run({ ...body, ...more }).result, 'against');
/** A deflection of so many inches, on a lift of .560. */
const taken = (off: number, more: object = {}) => ({ ...body, runningLift: inches(0.56 - off), ...more });

describe('light less running', () => {
  test('a train of 5e-5 in/lbf, 1.6 on .350: by its force balance .559220 light, .543980 running', () => {
    // V = rL − c(S + kV), solved by going round: another route than its closed form (rL − cS)/(1 + ck).
    const lift = (seat: number, rate: number) => {
      let found = 0;
      for (let round = 0; round < 100; round += 1) found = 1.6 * 0.35 - 5e-5 * (seat + rate * found);
      return found;
    };
    const [light, running] = [lift(10, 10), lift(130, 350)];
    expect(light).toBeCloseTo(0.55922, 6);
    expect(running).toBeCloseTo(0.54398, 6);
    const given = { lightLift: inches(light), runningLift: inches(running), lobeLift: inches(0.35) };
    // The ratios are 1.597773 and 1.554230: what is lost between them.
    expect(number(given, 'deflection')).toBeCloseTo(0.01524, 5);
    expect(number(given, 'ratioLost')).toBeCloseTo(1.597773 - 1.55423, 5);
  });

  test('.010 on a .350 lobe is .029 of ratio, .020 is .057, .040 is .114 (by hand)', () => {
    const lost = (off: number) => number(taken(off, { lobeLift: inches(0.35) }), 'ratioLost');
    expect(lost(0.01)).toBeCloseTo(0.0286, 4);
    expect(lost(0.02)).toBeCloseTo(0.0571, 4);
    expect(lost(0.04)).toBeCloseTo(0.1143, 4);
  });

  test('what was not sent is left out of the answer', () => {
    expect(Object.keys(Object(run(body).result))).toEqual(['deflection', 'against']);
    expect(against({})).toBe('none');
  });

  test('any lifts: light less running, its share of the lobe, alike in millimetres', () => {
    const lift = fc.double({ min: 0.2, max: 0.9, noNaN: true });
    const limit = fc.double({ min: 0, max: 0.01, noNaN: true });
    fc.assert(
      fc.property(lift, lift, lift, limit, (light, running, lobe, errorLimit) => {
        const of = (unit: (value: number) => object, factor: number) => ({
          lightLift: unit(light * factor),
          runningLift: unit(running * factor),
          lobeLift: unit(lobe * factor),
          errorLimit: unit(errorLimit * factor),
          mount: 'shaft',
        });
        const given = of(inches, 1);
        const inMm = of(mm, 25.4);
        const deflection = number(given, 'deflection');
        expect(deflection + running).toBeCloseTo(light, 12);
        expect(number(given, 'ratioLost') * lobe).toBeCloseTo(deflection, 12);
        const half = (number(given, 'interval95.1') - number(given, 'interval95.0')) / 2;
        // Two limits of one indicator, r = .5: the variance of the difference is that of one of them.
        expect(half).toBeCloseTo((1.959963984540054 * errorLimit) / Math.sqrt(3), 12);
        for (const path of ['deflection', 'interval95.0', 'interval95.1', 'usual.from', 'usual.to']) {
          expect(number(inMm, path, 'metric') / 25.4).toBeCloseTo(number(given, path), 12);
        }
        expect(partOf(run(inMm).result, 'against')).toBe(partOf(run(given).result, 'against'));
        // A running lift above the light one is set against nothing.
        if (deflection < -1e-8) expect(partOf(run(given).result, 'against')).toBe('none');
      }),
    );
  });
});

test('a Monte Carlo of two limits that go together by half has the spread of one of them', () => {
  let state = 11;
  const within = () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return (2 * state) / 2 ** 32 - 1;
  };
  // Each error is the mean of a shared part and one of its own, so scaled that its spread is that of a limit of .002.
  const draws = 200_000;
  let squares = 0;
  for (let draw = 0; draw < draws; draw += 1) {
    const shared = within();
    const [one, other] = [within(), within()];
    squares += ((0.002 / Math.SQRT2) * (shared + one) - (0.002 / Math.SQRT2) * (shared + other)) ** 2;
  }
  const u = Math.sqrt(squares / draws);
  const half = number(taken(0.02, { errorLimit: inches(0.002) }), 'interval95.1') - 0.02;
  expectNear(half / 1.959963984540054, u, 0.01);
});

describe('against what is usual (common practice, no published source)', () => {
  test('the band is that of the table, which the assessment uses too', () => {
    for (const mount of ['stud', 'pedestal', 'shaft'] as const) {
      const { from, to } = table.usualDeflection[mount];
      expectNear(number({ ...body, mount }, 'usual.from'), from);
      expectNear(number({ ...body, mount }, 'usual.to'), to);
      expect(run({ ...body, mount }).assumptions.join()).toContain('no published source');
    }
  });

  test.each([
    [0.004, 'less'],
    [0.005, 'usual'],
    [0.02, 'usual'],
    [0.0201, 'more'],
    [0, 'less'],
  ])('%d in on a shaft: %s', (off, wanted) => {
    expect(against(taken(off, { mount: 'shaft' }))).toBe(wanted);
  });

  test('only what is outside with all of its interval is more or less', () => {
    const within = { mount: 'shaft', errorLimit: inches(0.002) };
    expect(against(taken(0.022, within))).toBe('usual');
    expect(against(taken(0.0223, within))).toBe('more');
    expect(against(taken(0.003, within))).toBe('usual');
    expect(against(taken(0.0026, within))).toBe('less');
  });

  test('more and less are told with what to look at', () => {
    const said = (off: number) => run(taken(off, { mount: 'shaft' })).cautions.join();
    expect(said(0.03)).toContain('More than usual');
    expect(said(0.001)).toContain('Less than usual');
    expect(said(0.01)).not.toContain('usual:');
  });
});

describe('a running spring that reads more', () => {
  test('beyond its uncertainty the two are swapped or not alike: in words, against nothing', () => {
    const swapped = taken(-0.01, { mount: 'stud', errorLimit: inches(0.002) });
    expectNear(number(swapped, 'deflection'), -0.01);
    expect(partOf(run(swapped).result, 'against')).toBe('none');
    expect(run(swapped).cautions.join()).toContain('are the two swapped');
    expect(run(taken(-0.001)).cautions.join()).toContain('are the two swapped');
  });

  test('within it nothing was seen', () => {
    const unseen = taken(-0.001, { mount: 'stud', errorLimit: inches(0.002) });
    expect(partOf(run(unseen).result, 'against')).toBe('none');
    expect(run(unseen).cautions.join()).toContain('no deflection was seen');
    expect(run(unseen).cautions.join()).not.toContain('swapped');
  });
});

describe('what can’t be', () => {
  test('a ratio above 100, each lift that gives it', () => {
    const small = { ...body, lobeLift: inches(0.005) };
    expect(faults(small)).toEqual([
      '/lightLift impossible-input',
      '/lobeLift impossible-input',
      '/lobeLift impossible-input',
      '/runningLift impossible-input',
    ]);
    expect(faults({ ...small, runningLift: inches(0.4) })).toEqual([
      '/lightLift impossible-input',
      '/lobeLift impossible-input',
    ]);
  });

  test('a lift of zero, a mount that is none', () => {
    expect(faults({ ...body, runningLift: inches(0), mount: 'girdle' })).toEqual([
      '/mount not-allowed',
      '/runningLift out-of-range',
    ]);
  });

  test('whatever is sent', () => expectSoundUnderFire(computation, { ...body, lobeLift: inches(0.35) }));
});

describeContract(computation, {
  body: { ...body, lobeLift: inches(0.35), mount: 'stud', errorLimit: inches(0.002) },
  quantities: { lightLift: 'in', runningLift: 'in', errorLimit: 'in' },
  optional: ['lobeLift', 'mount', 'errorLimit'],
});
