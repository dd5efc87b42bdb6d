import { describe, expect, test } from 'vitest';
import { expectNear, expectSame } from './helpers/near.ts';
import {
  body,
  gapAt,
  number,
  numbers,
  profile,
  RAD,
  readings,
  registered,
  run,
} from './helpers/piston-to-valve-engine.ts';
import { deg, inches } from './helpers/quantities.ts';

describe('stroke 3.48, rod 5.70, 23°, gap .420, seat duration 280, centreline 106 (worked out apart by ray and plane)', () => {
  test('pocket: .377089 at 7.002°, flat: .379317 at 5.556°', () => {
    expect(number(body(), 'margin')).toBeCloseTo(0.377089, 6);
    expect(number(body(), 'atCrankAngle')).toBeCloseTo(7.002, 3);
    expect(number(body({ floor: 'flat' }), 'margin')).toBeCloseTo(0.379317, 6);
    expect(number(body({ floor: 'flat' }), 'atCrankAngle')).toBeCloseTo(5.556, 3);
  });

  test('the pocket’s gap at 0, 10, 20', () => {
    [0.387924, 0.379055, 0.41394].forEach((wanted, index) => {
      expect(gapAt(body(), 10 * index)).toBeCloseTo(wanted, 6);
    });
  });

  test('by readings every degree, whatever their order, at the lobe of a 1.6 rocker', () => {
    const { profile: _card, ...rest } = body();
    for (const [floor, margin, at] of [
      ['pocket', 0.377089, 7.002],
      ['flat', 0.379317, 5.556],
    ] as const) {
      const lifts = readings(-40, 250, 1, 1.6).toReversed();
      const given = { ...rest, floor, lifts, ratio: 1.6 };
      expect(Math.abs(number(given, 'margin') - margin)).toBeLessThan(2e-6);
      expect(Math.abs(number(given, 'atCrankAngle') - at)).toBeLessThan(0.05);
    }
  });

  test('by readings every two degrees from 20 before to 20 after TDC, as the trade takes them', () => {
    const { profile: _card, ...rest } = body();
    const given = { ...rest, lifts: readings(-20, 20, 2) };
    expect(Math.abs(number(given, 'margin') - 0.377089)).toBeLessThan(5e-5);
    expect(run(given).cautions.join(' ')).not.toContain('edge of the readings');
  });

  test('the sideways move: .003376, .013460, .030128, .053173 at 5, 10, 15, 20', () => {
    const angles = numbers(body(), 'radialShift', 'crankAngle');
    const shifts = numbers(body(), 'radialShift', 'shift');
    [0.003376, 0.01346, 0.030128, 0.053173].forEach((wanted, index) => {
      const place = angles.findIndex((angle) => Math.abs(angle - 5 * (index + 1)) < 1e-9);
      expect(shifts[place]).toBeCloseTo(wanted, 6);
    });
  });
});

describe('NumPy, lift and slider-crank in their plain forms, looked at each .0001° of the whole cycle', () => {
  test.each([
    ['4° early', { advance: deg(4) }, 8.6713, 0.35719387764730254],
    [
      'exhaust, offset, flat, lash, 3° late',
      {
        pinOffset: inches(0.06),
        valveAngle: deg(15),
        floor: 'flat',
        closedGapAtTdc: inches(0.35),
        profile: profile(0.36, 112, 290),
        side: 'exhaust',
        ratio: 1.6,
        lash: inches(0.016),
        advance: deg(-3),
      },
      -7.1051,
      0.3134682923702009,
    ],
    [
      'exhaust, little gap',
      {
        stroke: inches(3.75),
        rodLength: inches(6),
        valveAngle: deg(12),
        closedGapAtTdc: inches(0.1),
        profile: profile(0.4, 108, 300),
        side: 'exhaust',
        ratio: 1.7,
        advance: deg(6),
      },
      -7.6336,
      0.04342941170545024,
    ],
  ] as const)('%s', (_title, more, at, margin) => {
    expect(number(body(more), 'margin')).toBeCloseTo(margin, 10);
    expect(Math.abs(number(body(more), 'atCrankAngle') - at)).toBeLessThan(1e-4);
  });

  test('a valve shut all about TDC comes nearest there, closed', () => {
    const given = body({
      stroke: inches(4),
      rodLength: inches(6.135),
      floor: 'flat',
      profile: profile(0.35, 130, 180),
      ratio: 1.5,
    });
    expectNear(number(given, 'margin'), 0.42);
    expect(number(given, 'atCrankAngle')).toBe(0);
  });
});

describe('one point by hand: gap .300 closed, drop .100, lift .050, 23°', () => {
  // The crank angle at which the drop is .100 in, then the three terms.
  const angle = (() => {
    let [low, high] = [0, 90];
    for (let step = 0; step < 80; step += 1) {
      const middle = (low + high) / 2;
      const [y, x] = [Math.sin(middle * RAD), Math.cos(middle * RAD)];
      const drop = 7.44 - 1.74 * x - Math.sqrt(5.7 ** 2 - (1.74 * y) ** 2);
      if (drop < 0.1) low = middle;
      else high = middle;
    }
    return low;
  })();
  test.each([
    ['pocket', 0.34205],
    ['flat', 0.358636],
  ])('%s', (floor, wanted) => {
    const { profile: _card, ...rest } = body({ floor, closedGapAtTdc: inches(0.3) });
    const lifts = [angle, angle + 1e-6].map((each) => ({ crankAngle: deg(each), lift: inches(0.05) }));
    expect(number({ ...rest, lifts }, 'margin')).toBeCloseTo(wanted, 6);
    expect(numbers({ ...rest, lifts }, 'curve', 'gap')).toHaveLength(2);
  });
});

describe('wrong formulas give other numbers', () => {
  test('cos for a flat crown is low, though on the careful side', () => {
    expect(number(body({ floor: 'flat' }), 'margin') - number(body(), 'margin')).toBeGreaterThan(0.002);
  });
  test('the closest place is not full lift', () => {
    expect(number(body(), 'atCrankAngle')).toBeLessThan(30);
  });
  test('advance costs the intake and spares the exhaust; retard the other way about', () => {
    const exhaust = { side: 'exhaust' };
    for (const [more, sign] of [
      [{}, 1],
      [exhaust, -1],
    ] as const) {
      const at = (degrees: number) => number(body({ ...more, advance: deg(degrees) }), 'margin');
      expect((at(0) - at(5)) * sign).toBeGreaterThan(0.005);
      expect((at(-5) - at(0)) * sign).toBeGreaterThan(0.005);
    }
  });
});

describe('limits and verdict', () => {
  test('usual defaults .080 intake, .100 exhaust (trade press)', () => {
    expectNear(number(body(), 'limit'), 0.08);
    expectNear(number(body({ side: 'exhaust' }), 'limit'), 0.1);
  });
  test('clear, close, short, and contact said in words', () => {
    const verdict = (more: object) => run(body(more));
    expect(verdict({ limit: inches(0.37) }).result).toMatchObject({ verdict: 'clear' });
    expect(verdict({ limit: inches(0.37), uncertainty: inches(0.01) }).result).toMatchObject({
      verdict: 'close',
    });
    expect(verdict({ limit: inches(0.4), uncertainty: inches(0.01) }).result).toMatchObject({
      verdict: 'short',
    });
    const contact = verdict({ closedGapAtTdc: inches(0.02) });
    expect(contact.result).toMatchObject({ verdict: 'short' });
    expect(number(body({ closedGapAtTdc: inches(0.02) }), 'margin')).toBeCloseTo(0.377089 - 0.4, 6);
    expect(contact.cautions.join(' ')).toContain('would meet');
    expect(contact.cautions.join(' ')).not.toMatch(/\bsafe/i);
  });
  test('a least gap at the edge of the readings is said to be that', () => {
    const { profile: _card, ...rest } = body();
    expect(run({ ...rest, lifts: readings(-20, 4, 2) }).cautions.join(' ')).toContain('edge of the readings');
  });
});

test('the worked example (SciPy: PchipInterpolator and the root of the slope)', () => {
  expectSame(run(registered.example.inputs).result, registered.example.result);
});
