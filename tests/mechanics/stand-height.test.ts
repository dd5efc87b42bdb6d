import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { computation as sweepComputation } from '../../server/mechanics/computations/roller-sweep.ts';
import { computation } from '../../server/mechanics/computations/stand-height.ts';
import { describeContract } from './helpers/bad-input.ts';
import { expectNear } from './helpers/near.ts';
import { deg, inches, mm } from './helpers/quantities.ts';
import { runner } from './helpers/runner.ts';
import { expectSoundUnderFire } from './helpers/under-fire.ts';

const { run, number, faults, refused } = runner(computation);
const sweep = runner(sweepComputation);
const stand = {
  pivotHeight: inches(1.95),
  tipHeight: inches(2),
  netLift: inches(0.6),
  pivotToTip: inches(1.5),
  rollerRadius: inches(0.3),
};
const withShims = (...values: number[]) => ({ ...stand, shims: { values, unit: 'in' } });
const cautions = (body: object) => run(body).cautions.join(' ');

describe('the half-lift rule', () => {
  test('closed, the pivot stands half the net lift below the roller (rocker-geometry page)', () => {
    // Roller axis 2.000 + .300, pivot 1.950: .350 below it, .300 wanted.
    expectNear(number(stand, 'pivotOffset.now'), 0.35);
    expectNear(number(stand, 'pivotOffset.wanted'), 0.3);
    expect(number(stand, 'shim')).toBeCloseTo(0.05, 12);
  });

  test('without a radius the tip height is the roller’s axis', () => {
    const { rollerRadius: _, ...axis } = stand;
    expect(number({ ...axis, tipHeight: inches(2.3) }, 'shim')).toBeCloseTo(0.05, 12);
    expect(run(axis).assumptions.join()).toContain('the height of the roller’s axis');
    expect(run(stand).assumptions.join()).toContain('the roller stands on it');
  });

  test('too high is to be lowered; at the right height nothing is to be done', () => {
    expect(number({ ...stand, pivotHeight: inches(2.1) }, 'shim')).toBeCloseTo(-0.1, 12);
    expect(cautions({ ...stand, pivotHeight: inches(2.1) })).toContain('.100 in too high');
    const right = { ...withShims(0.03), pivotHeight: inches(2) };
    expect(Math.abs(number(right, 'shim'))).toBeLessThan(1e-12);
    expect(run(right).result).not.toHaveProperty('nearest');
    expect(cautions(right)).not.toContain('too high');
  });

  test('it does not matter where the face is, above or below', () => {
    for (const face of [-3, 2.1, 5]) {
      const moved = { ...stand, pivotHeight: inches(1.95 - face), tipHeight: inches(2 - face) };
      expect(number(moved, 'shim')).toBeCloseTo(0.05, 10);
    }
  });
});

/** Sweep of a roller that goes down by `lift` from `offset` over its pivot: its circle walked in small steps. */
function sweepWalked(arm: number, lift: number, offset: number): number {
  const outward = Array.from({ length: 401 }, (_, step) =>
    Math.sqrt(Math.max(0, arm ** 2 - (offset - (lift * step) / 400) ** 2)),
  );
  return Math.max(...outward) - Math.min(...outward);
}

/** The shim of least sweep, by narrowing down between the two ends (golden section). */
function shimBySearch(arm: number, lift: number, now: number): number {
  const part = (Math.sqrt(5) - 1) / 2;
  let [low, high] = [now - lift, now];
  while (high - low > 1e-7) {
    const [left, right] = [high - part * (high - low), low + part * (high - low)];
    if (sweepWalked(arm, lift, now - left) < sweepWalked(arm, lift, now - right)) high = right;
    else low = left;
  }
  return (low + high) / 2;
}

const rockers = fc
  .record({
    arm: fc.double({ min: 1, max: 2, noNaN: true }),
    lift: fc.double({ min: 0.2, max: 0.9, noNaN: true }),
    radius: fc.double({ min: 0.1, max: 0.4, noNaN: true }),
    off: fc.double({ min: -0.15, max: 0.15, noNaN: true }),
    face: fc.double({ min: 0, max: 4, noNaN: true }),
  })
  .map(({ arm, lift, radius, off, face }) => ({
    arm,
    lift,
    now: lift / 2 + off,
    body: {
      pivotHeight: inches(face),
      tipHeight: inches(face + lift / 2 + off - radius),
      netLift: inches(lift),
      pivotToTip: inches(arm),
      rollerRadius: inches(radius),
    },
  }));

describe('any rocker', () => {
  test('no other height sweeps less: the least is found by walking the roller at every height', () => {
    fc.assert(
      fc.property(rockers, ({ arm, lift, now, body }) => {
        const shim = number(body, 'shim');
        // The sweep has a crease at its least, so the search finds it nearly exactly.
        expect(Math.abs(shim - shimBySearch(arm, lift, now))).toBeLessThan(2e-5);
        const least = sweepWalked(arm, lift, now - shim);
        for (const other of [-0.05, -0.01, 0.01, 0.05])
          expect(sweepWalked(arm, lift, now - shim - other)).toBeGreaterThan(least);
      }),
      { numRuns: 60 },
    );
  });

  test('it never disagrees with roller-sweep, and once shimmed nothing is left to do', () => {
    fc.assert(
      fc.property(rockers, ({ body }) => {
        const { pivotToTip, netLift, pivotHeight } = body;
        const wanted = sweep.number({ pivotToTip, netLift, setAt: 'mid-lift' }, 'pivotOffset');
        expect(number(body, 'pivotOffset.wanted')).toBe(wanted);
        const shim = number(body, 'shim');
        const raised = { ...body, pivotHeight: inches(pivotHeight.value + shim) };
        expect(Math.abs(number(raised, 'shim'))).toBeLessThan(1e-12);
        expect(number(raised, 'pivotOffset.now')).toBeCloseTo(wanted, 12);
        expect(number({ ...body, netLift: mm(netLift.value * 25.4) }, 'shim')).toBeCloseTo(shim, 12);
      }),
    );
  });
});

describe('the nearest shim', () => {
  test('one alone, with what it leaves', () => {
    expectNear(number(withShims(0.015, 0.06, 0.03), 'nearest.shim'), 0.06);
    expect(number(withShims(0.015, 0.06, 0.03), 'nearest.difference')).toBeCloseTo(0.01, 12);
    expect(number(withShims(0.015, 0.06, 0.03), 'nearest.pivotOffset')).toBeCloseTo(0.29, 12);
    // .015 and .030 together would be nearer than .060: a stack is listed as its sum.
    expectNear(number(withShims(0.015, 0.06, 0.03, 0.045), 'nearest.shim'), 0.045);
  });

  test('of two equally near the thinner, whichever stands first', () => {
    expectNear(number(withShims(0.06, 0.04), 'nearest.shim'), 0.04);
    expectNear(number(withShims(0.04, 0.06), 'nearest.shim'), 0.04);
  });

  test('none lowers a stand, and an empty list has none', () => {
    expect(run({ ...withShims(0.03), pivotHeight: inches(2.1) }).result).not.toHaveProperty('nearest');
    expect(run(withShims()).result).not.toHaveProperty('nearest');
    expect(cautions(withShims())).toContain('No shims were named');
    expect(run(stand).result).not.toHaveProperty('nearest');
  });

  test('where leaving it is nearer than the thinnest, that is said', () => {
    expectNear(number(withShims(0.12), 'nearest.shim'), 0.12);
    expect(cautions(withShims(0.12))).toContain('.050 in low against .070 in high');
    expect(cautions(withShims(0.1))).not.toContain('No shim at all');
  });
});

describe('input that can’t be', () => {
  test('an axis further off than the arm, a lift over twice the arm, a roller as large as the arm', () => {
    const heights = ['/pivotHeight', '/pivotToTip', '/tipHeight'].map((each) => `${each} impossible-input`);
    expect(faults({ ...stand, tipHeight: inches(3.2) })).toEqual(heights);
    expect(faults({ ...stand, pivotHeight: inches(3.9) })).toEqual(heights);
    expect(refused({ ...stand, pivotHeight: inches(0.81) })).toEqual([]);
    expect(faults({ ...stand, netLift: inches(3.01) })).toEqual([
      '/netLift impossible-input',
      '/pivotToTip impossible-input',
    ]);
    expect(faults({ ...stand, tipHeight: inches(0.6), rollerRadius: inches(1.5) })).toEqual([
      '/pivotToTip impossible-input',
      '/rollerRadius impossible-input',
    ]);
  });

  test('faults at their places, several at once', () => {
    expect(faults({ ...stand, tipHeight: inches(9), netLift: inches(4) })).toEqual([
      '/netLift impossible-input',
      '/pivotHeight impossible-input',
      '/pivotToTip impossible-input',
      '/pivotToTip impossible-input',
      '/tipHeight impossible-input',
    ]);
    expect(faults({ ...withShims(0, -1), rollerRadius: deg(3) })).toEqual([
      '/rollerRadius wrong-dimension',
      '/shims/values/0 out-of-range',
      '/shims/values/1 out-of-range',
    ]);
  });

  test('under fire', () => {
    expectSoundUnderFire(computation, withShims(0.03, 0.06));
  }, 30_000);
});

const { rollerRadius: _, ...least } = stand;
describeContract(computation, {
  body: { ...least, tipHeight: inches(2.3) },
  quantities: { pivotHeight: 'in', tipHeight: 'mm', netLift: 'in', pivotToTip: 'in' },
  signed: ['pivotHeight', 'tipHeight'],
  impossibleBelow: ['netLift'],
});
