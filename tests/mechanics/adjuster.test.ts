import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { computation } from '../../server/mechanics/computations/adjuster.ts';
import { describeContract } from './helpers/bad-input.ts';
import { expectNear } from './helpers/near.ts';
import { inches, mm } from './helpers/quantities.ts';
import { runner } from './helpers/runner.ts';

const { run, number, faults } = runner(computation);
const turn = { thread: '7/16-20', turns: 1, ratio: 1.5, mount: 'stud-nut', lifter: 'hydraulic' };
const wanted = {
  thread: '7/16-20',
  preload: inches(0.03),
  ratio: 1.5,
  mount: 'stud-nut',
  lifter: 'hydraulic',
};

describe('preload of a hydraulic lifter', () => {
  test.each([
    // One turn of a nut on the stud, pitch × (1 + 1/ratio), by hand.
    ['3/8-24', 0.069444, 0.067708, 0.066176],
    ['7/16-20', 0.083333, 0.08125, 0.079412],
    ['5/16-18', 0.092593, 0.090278, 0.088235],
    ['5/16-24', 0.069444, 0.067708, 0.066176],
  ])('a turn on %s presses the plunger by %d, %d, %d in at 1.5, 1.6, 1.7', (thread, ...travels) => {
    [1.5, 1.6, 1.7].forEach((ratio, index) => {
      expect(number({ ...turn, thread, ratio }, 'seatMovement')).toBeCloseTo(travels[index] ?? 0, 6);
    });
  });

  test('half a turn of 7/16-20 at 1.5 is .041667 in', () => {
    expect(number({ ...turn, turns: 0.5 }, 'seatMovement')).toBeCloseTo(0.041667, 6);
  });

  test('.030 in of preload is .36 turn of 7/16-20, .432 of 3/8-24, at 1.5', () => {
    expectNear(number(wanted, 'turns'), 0.36);
    expectNear(number(wanted, 'seatMovement'), 0.03);
    expectNear(number({ ...wanted, thread: '3/8-24' }, 'turns'), 0.432);
  });

  test('a forum’s one pitch a turn leaves out the lever: at least 1.59 times too little', () => {
    for (const ratio of [1.5, 1.6, 1.7]) {
      const pitch = 1 / 18;
      const travel = number({ ...turn, thread: '5/16-18', ratio }, 'seatMovement');
      expect(travel / pitch).toBeGreaterThan(1.58);
      expect(travel / pitch).toBeLessThan(1.67);
    }
    expect(run(turn).cautions.join()).toContain('leaves out the lever');
  });

  test('a screw at the cup moves one pitch, one at the valve a pitch over the ratio', () => {
    expectNear(number({ ...turn, mount: 'cup-screw' }, 'seatMovement'), 0.05);
    expectNear(number({ ...turn, mount: 'valve-end-screw' }, 'seatMovement'), 0.05 / 1.5);
  });

  test('backing off takes preload away', () => {
    expectNear(number({ ...turn, turns: -0.25 }, 'seatMovement'), -0.25 * 0.05 * (1 + 1 / 1.5));
  });

  test('the lash of a hydraulic lifter does not change: it is left out', () => {
    expect(run(turn).result).toHaveProperty('seatMovement');
    expect(run(turn).result).not.toHaveProperty('lashChange');
  });
});

describe('lash with a solid lifter', () => {
  const solid = { ...turn, lifter: 'solid' };

  test.each([
    // (1 + ratio) × pitch a turn of a nut on the stud, by hand.
    ['7/16-20', 'stud-nut', 0.125, 0.13, 0.135],
    ['3/8-24', 'stud-nut', 0.104167, 0.108333, 0.1125],
    ['3/8-24', 'cup-screw', 0.0625, 0.066667, 0.070833],
  ])('a turn of %s, %s, closes %d, %d, %d in at 1.5, 1.6, 1.7', (thread, mount, ...closes) => {
    [1.5, 1.6, 1.7].forEach((ratio, index) => {
      expect(number({ ...solid, thread, mount, ratio }, 'lashChange')).toBeCloseTo(-(closes[index] ?? 0), 6);
    });
  });

  test('a screw at the valve closes one pitch a turn', () => {
    expectNear(number({ ...solid, mount: 'valve-end-screw' }, 'lashChange'), -0.05);
  });

  test('loosening opens the gap; no turn leaves it, without a minus', () => {
    expectNear(number({ ...solid, turns: -1 }, 'lashChange'), 0.125);
    expect(Object.is(number({ ...solid, turns: 0 }, 'lashChange'), 0)).toBe(true);
  });

  test('no plunger, no preload', () => {
    expect(run(solid).result).toHaveProperty('lashChange');
    expect(run(solid).result).not.toHaveProperty('seatMovement');
    expect(faults({ ...wanted, lifter: 'solid' })).toEqual([
      '/lifter impossible-input',
      '/preload impossible-input',
    ]);
  });
});

describe('the inputs', () => {
  test('turns or preload, exactly one', () => {
    expect(faults({ ...turn, preload: inches(0.03) })).toEqual(['/preload not-allowed']);
    const { turns: _, ...neither } = turn;
    expect(faults(neither)).toEqual(['/turns required']);
    expect(faults({ ...wanted, preload: 7 })).toEqual(['/preload wrong-dimension']);
    expect(faults({ ...wanted, preload: inches(-0.01) })).toEqual(['/preload out-of-range']);
  });

  test('a thread that is not in the table, or a size alone', () => {
    expect(faults({ ...turn, thread: '7/16' })).toEqual(['/thread not-allowed']);
    expect(faults({ ...turn, thread: 20 })).toEqual(['/thread not-allowed']);
  });

  test('more turns than any stud has', () => {
    expect(faults({ ...turn, turns: 1001 })).toEqual(['/turns impossible-input']);
    expect(faults({ ...wanted, preload: inches(99), mount: 'valve-end-screw' })).toEqual([
      '/preload impossible-input',
    ]);
  });

  test('another mount or lifter', () => {
    expect(faults({ ...turn, mount: 'glue', lifter: 'roller' })).toEqual([
      '/lifter not-allowed',
      '/mount not-allowed',
    ]);
  });
});

const ratios = fc.double({ min: 1, max: 2.2, noNaN: true });
const threads = fc.constantFrom('3/8-24', '7/16-20', '5/16-18', 'M8×1.25', 'M10×1.5');

test('preload and turns are each other’s inverse, in inches and millimetres', () => {
  const mounts = fc.constantFrom('stud-nut', 'cup-screw', 'valve-end-screw');
  fc.assert(
    fc.property(
      threads,
      mounts,
      ratios,
      fc.double({ min: 0, max: 0.2, noNaN: true }),
      (thread, mount, ratio, depth) => {
        const there = { ...wanted, thread, mount, ratio, preload: inches(depth) };
        const turns = number(there, 'turns');
        expect(number({ ...turn, thread, mount, ratio, turns }, 'seatMovement')).toBeCloseTo(depth, 12);
        expect(number({ ...there, preload: mm(depth * 25.4) }, 'turns')).toBeCloseTo(turns, 11);
        expect(number(there, 'seatMovement', 'metric')).toBeCloseTo(depth * 25.4, 11);
      },
    ),
  );
});

test('a small turn of a lever drawn in full, its tip held and its pivot lowered, moves the cup as much', () => {
  fc.assert(
    fc.property(
      threads,
      ratios,
      fc.double({ min: 0.001, max: 0.02, noNaN: true }),
      (thread, ratio, turns) => {
        // Cup arm 1 in, valve arm `ratio`, in line and level: tip held at the origin, pivot comes down by `drop`.
        const pitch = number({ ...turn, thread, turns: 1, ratio, mount: 'cup-screw' }, 'seatMovement');
        const drop = turns * pitch;
        const slope = Math.asin(drop / ratio);
        const cupDrop = (ratio + 1) * Math.sin(slope);
        const travel = number({ ...turn, thread, turns, ratio }, 'seatMovement');
        expect(travel / cupDrop).toBeCloseTo(1, 9);
        // With the cup held instead, the tip comes down by the gap that closes.
        const tipDrop = (ratio + 1) * Math.sin(Math.asin(drop));
        expect(
          -number({ ...turn, thread, turns, ratio, lifter: 'solid' }, 'lashChange') / tipDrop,
        ).toBeCloseTo(1, 9);
      },
    ),
  );
});

describeContract(computation, { body: turn, numbers: ['turns', 'ratio'] });
