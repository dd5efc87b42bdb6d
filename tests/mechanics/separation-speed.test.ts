import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { computation } from '../../server/mechanics/computations/separation-speed.ts';
import { MOTION_LAWS, motionLaw } from '../../server/mechanics/motion-laws/motion-law.ts';
import { describeContract } from './helpers/bad-input.ts';
import { expectNear } from './helpers/near.ts';
import { deg, inches, inUnit, lbf, lbfPerInch, mm, newtons } from './helpers/quantities.ts';
import { partOf, runner } from './helpers/runner.ts';

const { run, number, faults } = runner(computation);
const pounds = (value: number) => ({ value, unit: 'lb' as const });

/** Standard gravity in inches, by which pounds of weight become mass (9.80665 m/s², exact). */
const GRAVITY = 9.80665 / 0.0254;

/** An eccentric of 5 mm, driven by half a turn of the cam; worked by hand. */
const eccentric = {
  effectiveMass: { value: 0.2, unit: 'kg' },
  seatLoad: newtons(250),
  rate: { value: 40, unit: 'N/mm' },
  law: 'shm',
  lift: mm(10),
  flank: deg(180),
};

/** A valve on a 4-5-6-7 flank; worked apart from this code by minimising on a fine grid. */
const valve = {
  effectiveMass: pounds(0.4),
  seatLoad: lbf(130),
  rate: lbfPerInch(350),
  law: '4-5-6-7',
  lift: inches(0.5),
  flank: deg(70),
};

describe('the worked cases', () => {
  test('eccentric: √((F₀ + 2ke)/(me)) = 806.225775 rad/s = 7698.889 rpm at the cam, at full lift (by hand)', () => {
    expect(number(eccentric, 'camSpeed')).toBeCloseTo(7698.889, 3);
    expectNear((number(eccentric, 'camSpeed') * Math.PI) / 30, 806.225775, 1e-9);
    expectNear(number(eccentric, 'atLift', 'metric'), 10);
    expect(number(eccentric, 'crankSpeed')).toBeCloseTo(2 * 7698.889, 2);
  });

  test('4-5-6-7: 3165.144 rpm cam, 6330.288 crank, lost at .442361 in', () => {
    expect(number(valve, 'camSpeed')).toBeCloseTo(3165.144, 3);
    expect(number(valve, 'crankSpeed')).toBeCloseTo(6330.288, 3);
    expect(number(valve, 'atLift')).toBeCloseTo(0.442361, 6);
  });

  test('that is not where the acceleration peaks, nor at full lift', () => {
    // At the peak (u = (5 + √5)/10), |a| is 2.516770 in/rad² and the lift .43868 in: a higher speed.
    const law = motionLaw('4-5-6-7');
    const atPeak = law.at((5 + Math.sqrt(5)) / 10);
    const flank = (70 * Math.PI) / 180;
    expect((-atPeak.a * 0.5) / flank ** 2).toBeCloseTo(2.51677, 5);
    const speed = Math.sqrt((130 + 350 * 0.5 * atPeak.s) / ((0.4 / GRAVITY) * 2.51677));
    expect((speed * 30) / Math.PI).toBeGreaterThan(number(valve, 'camSpeed') + 0.5);
    expect(number(valve, 'atLift')).toBeLessThan(0.499);
  });

  test('pounds are a mass: .40 lb is 181.436948 g (exact by definition)', () => {
    const grams = { ...valve, effectiveMass: { value: 181.436948, unit: 'g' } };
    expectNear(number(grams, 'camSpeed'), number(valve, 'camSpeed'));
  });

  test('the answer says that it is an upper bound', () => {
    expect(partOf(run(valve).result, 'note')).toContain('upper bound');
    expect(run(valve).cautions.join()).toContain('upper bound');
  });
});

describe('laws with a closed answer', () => {
  test('parabolic: the deceleration is constant, so contact goes where the spring is weakest, at half lift', () => {
    const given = { ...valve, law: 'parabolic' };
    const flank = (70 * Math.PI) / 180;
    const speed = Math.sqrt((130 + 350 * 0.25) / ((0.4 / GRAVITY) * 0.5 * 4)) * flank;
    expectNear(number(given, 'camSpeed'), (speed * 30) / Math.PI);
    expectNear(number(given, 'atLift'), 0.25);
  });

  test('simple harmonic: contact goes at full lift', () => {
    expectNear(number({ ...valve, law: 'shm' }, 'atLift'), 0.5);
  });
});

describe.each(MOTION_LAWS)('on the %s law', (law) => {
  const { at } = motionLaw(law);
  const cases = fc.record({
    mass: fc.double({ min: 0.05, max: 3, noNaN: true }),
    seat: fc.double({ min: 0, max: 900, noNaN: true }),
    k: fc.double({ min: 1, max: 2000, noNaN: true }),
    lift: fc.double({ min: 0.05, max: 1.5, noNaN: true }),
    flank: fc.double({ min: 20, max: 300, noNaN: true }),
  });
  type Case = { mass: number; seat: number; k: number; lift: number; flank: number };

  const bodyOf = ({ mass, seat, k, lift, flank }: Case) => ({
    effectiveMass: pounds(mass),
    seatLoad: lbf(seat),
    rate: lbfPerInch(k),
    law,
    lift: inches(lift),
    flank: deg(flank),
  });

  /** Cam rpm at which contact is lost at `u`, in inches and pounds. */
  const speedAt = ({ mass, seat, k, lift, flank }: Case, u: number) => {
    const { s, a } = at(u);
    const perSquareRadian = (-a * lift) / ((flank * Math.PI) / 180) ** 2;
    return (Math.sqrt((seat + k * lift * s) / ((mass / GRAVITY) * perSquareRadian)) * 30) / Math.PI;
  };

  test('no point of the slowing half gives a lower speed, and one gives this one', () => {
    fc.assert(
      fc.property(cases, fc.integer({ min: 0, max: 2 ** 30 }), (given, seed) => {
        const found = number(bodyOf(given), 'camSpeed');
        let lowest = Number.POSITIVE_INFINITY;
        for (let index = 0; index <= 3000; index += 1) {
          // Points that fall differently each time, so that no grid of the code is met by chance.
          const u = 0.5 + (0.5 * (index + (seed % 997) / 997)) / 3001;
          if (at(u).a < 0) lowest = Math.min(lowest, speedAt(given, u));
        }
        expect(found).toBeLessThanOrEqual(lowest * (1 + 1e-12));
        // The samples lie up to 1/6000 of the flank from the true place.
        expect(found).toBeGreaterThan(lowest * (1 - 1e-3));
      }),
      { numRuns: 60 },
    );
  });

  test('the lift told is where the spring just fails', () => {
    fc.assert(
      fc.property(cases, (given) => {
        const found = number(bodyOf(given), 'camSpeed');
        const share = number(bodyOf(given), 'atLift') / given.lift;
        // The place on the flank of that lift, by halving the law itself: a second route to the same speed.
        let [low, high] = [0.5, 1];
        for (let step = 0; step < 60; step += 1) {
          const middle = (low + high) / 2;
          if (at(middle).s < share) low = middle;
          else high = middle;
        }
        expect(share).toBeGreaterThanOrEqual(0.5 - 1e-12);
        expect(share).toBeLessThanOrEqual(1 + 1e-12);
        expect(speedAt(given, high) / found).toBeCloseTo(1, 6);
      }),
      { numRuns: 60 },
    );
  });

  test('metric in, metric out is the same engine', () => {
    fc.assert(
      fc.property(cases, (given) => {
        const body = bodyOf(given);
        const metric = {
          ...body,
          effectiveMass: inUnit(body.effectiveMass, 'kg'),
          seatLoad: inUnit(body.seatLoad, 'N'),
          rate: inUnit(body.rate, 'N/mm'),
          lift: inUnit(body.lift, 'mm'),
        };
        expectNear(number(metric, 'camSpeed', 'metric'), number(body, 'camSpeed'), 1e-11);
        expectNear(number(metric, 'atLift', 'metric'), number(body, 'atLift') * 25.4, 1e-6);
        expectNear(number(body, 'crankSpeed'), 2 * number(body, 'camSpeed'), 1e-15);
      }),
      { numRuns: 30 },
    );
  });
});

describe('what can’t be', () => {
  test('a flank longer than a turn of the cam', () => {
    expect(faults({ ...valve, flank: deg(360.1) })).toEqual(['/flank impossible-input']);
    expect(faults({ ...valve, flank: deg(0) })).toEqual(['/flank out-of-range']);
    expect(number({ ...valve, flank: deg(360) }, 'camSpeed')).toBeGreaterThan(0);
  });

  test('no mass, no rate, no lift, another law', () => {
    expect(faults({ ...valve, effectiveMass: pounds(0) })).toEqual(['/effectiveMass out-of-range']);
    expect(faults({ ...valve, rate: lbfPerInch(0) })).toEqual(['/rate out-of-range']);
    expect(faults({ ...valve, lift: inches(0) })).toEqual(['/lift out-of-range']);
    expect(faults({ ...valve, law: 'cubic' })).toEqual(['/law not-allowed']);
  });
});

describeContract(computation, {
  body: valve,
  quantities: { effectiveMass: 'lb', seatLoad: 'lbf', rate: 'lbf/in', lift: 'in', flank: 'deg' },
});
