import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { computation } from '../../server/mechanics/computations/piston-to-valve.ts';
import { motionLaw } from '../../server/mechanics/motion-laws/motion-law.ts';
import { expectNear, expectSame } from './helpers/near.ts';
import { deg, inches, mm } from './helpers/quantities.ts';
import { runner } from './helpers/runner.ts';
import { expectSoundUnderFire } from './helpers/under-fire.ts';

const { registered, run, number, numbers, refused } = runner(computation);
const law = motionLaw('4-5-6-7');
const RAD = Math.PI / 180;

const profile = (lobeLift: number, centreline: number, seat: number) => ({
  lobeLift: inches(lobeLift),
  centreline: deg(centreline),
  durations: [{ atLift: inches(0), duration: deg(seat) }],
});

const engine = {
  stroke: inches(3.48),
  rodLength: inches(5.7),
  valveAngle: deg(23),
  floor: 'pocket',
  closedGapAtTdc: inches(0.42),
  side: 'intake',
  ratio: 1,
};
const body = (more: object = {}) => ({ ...engine, profile: profile(0.5, 106, 280), ...more });

/** The same lobe as readings: lift .500·s4567(1 − |θ − 106|/140) every so many degrees. */
const readings = (from: number, to: number, step: number, ratio = 1) =>
  Array.from({ length: Math.round((to - from) / step) + 1 }, (_, index) => {
    const angle = from + index * step;
    const share = Math.max(0, 1 - Math.abs(angle - 106) / 140);
    return { crankAngle: deg(angle), lift: inches((0.5 * law.at(share).s) / ratio) };
  });

const gapAt = (given: object, angle: number): number => {
  const angles = numbers(given, 'curve', 'crankAngle');
  const index = angles.findIndex((each) => Math.abs(each - angle) < 1e-9);
  return numbers(given, 'curve', 'gap')[index] ?? Number.NaN;
};

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

describe('any engine', () => {
  const cases = fc.record({
    stroke: fc.double({ min: 2, max: 5, noNaN: true }),
    rodOver: fc.double({ min: 1.4, max: 2.2, noNaN: true }),
    offset: fc.double({ min: -0.1, max: 0.1, noNaN: true }),
    tilt: fc.double({ min: 0, max: 40, noNaN: true }),
    floor: fc.constantFrom('pocket', 'flat'),
    gap: fc.double({ min: 0, max: 0.6, noNaN: true }),
    side: fc.constantFrom('intake', 'exhaust'),
    lift: fc.double({ min: 0.2, max: 0.5, noNaN: true }),
    centreline: fc.double({ min: 90, max: 130, noNaN: true }),
    seat: fc.double({ min: 200, max: 340, noNaN: true }),
    ratio: fc.double({ min: 1, max: 2, noNaN: true }),
    lash: fc.double({ min: 0, max: 0.03, noNaN: true }),
    advance: fc.double({ min: -10, max: 10, noNaN: true }),
  });

  test('no gap of a plain scan of the whole cycle is less, and one is as small to .000001', () => {
    fc.assert(
      fc.property(cases, (each) => {
        const given = {
          stroke: inches(each.stroke),
          rodLength: inches(each.stroke * each.rodOver),
          pinOffset: inches(each.offset),
          valveAngle: deg(each.tilt),
          floor: each.floor,
          closedGapAtTdc: inches(each.gap),
          side: each.side,
          profile: profile(each.lift, each.centreline, each.seat),
          ratio: each.ratio,
          lash: inches(each.lash),
          advance: deg(each.advance),
        };
        const [a, l, e] = [each.stroke / 2, each.stroke * each.rodOver, each.offset];
        const tdc = Math.asin(e / (l + a));
        const top = Math.sqrt((l + a) ** 2 - e ** 2);
        const peak = (each.side === 'intake' ? 1 : -1) * each.centreline - each.advance;
        const per = each.floor === 'pocket' ? Math.cos(each.tilt * RAD) : 1 / Math.cos(each.tilt * RAD);
        let least = Number.POSITIVE_INFINITY;
        for (let step = -18_000; step <= 18_000; step += 1) {
          const angle = step / 50;
          const crank = angle * RAD + tdc;
          const drop = top - a * Math.cos(crank) - Math.sqrt(l ** 2 - (a * Math.sin(crank) - e) ** 2);
          const away = Math.abs(((((angle - peak + 360) % 720) + 720) % 720) - 360);
          const share = Math.max(0, 1 - away / (each.seat / 2));
          const lift = Math.max(0, each.lift * law.at(share).s * each.ratio - each.lash);
          least = Math.min(least, each.gap + drop * per - lift);
        }
        const margin = number(given, 'margin');
        expect(margin).toBeLessThanOrEqual(least + 1e-12);
        expect(least - margin).toBeLessThan(1e-6);
      }),
      { numRuns: 40 },
    );
  }, 60_000);

  test('metric in, inch out', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.05, max: 0.6, noNaN: true }), (gap) => {
        const metric = body({ stroke: mm(88.392), rodLength: mm(144.78), closedGapAtTdc: mm(gap * 25.4) });
        const inInches = number(body({ closedGapAtTdc: inches(gap) }), 'margin');
        expect(number(metric, 'margin')).toBeCloseTo(inInches, 12);
        expect(number(metric, 'margin', 'metric')).toBeCloseTo(inInches * 25.4, 10);
      }),
      { numRuns: 20 },
    );
  });
});

test('advance moves readings as it moves a card', () => {
  const { profile: _card, ...rest } = body();
  for (const advance of [deg(4), deg(-4)]) {
    const byReadings = number({ ...rest, lifts: readings(-40, 250, 1), advance }, 'margin');
    expect(Math.abs(byReadings - number(body({ advance }), 'margin'))).toBeLessThan(2e-6);
  }
});

test('a bump under half a degree wide is not stepped over', () => {
  const { profile: _card, ...rest } = body();
  const bump = [
    [0, 0],
    [41, 0],
    [41.2, 0.4],
    [41.4, 0],
    [90, 0],
  ] as const;
  const lifts = bump.map(([angle, lift]) => ({ crankAngle: deg(angle), lift: inches(lift) }));
  const drop = 7.44 - 1.74 * Math.cos(41.2 * RAD) - Math.sqrt(5.7 ** 2 - (1.74 * Math.sin(41.2 * RAD)) ** 2);
  const given = { ...rest, lifts, ratio: 2 };
  expect(number(given, 'margin')).toBeLessThanOrEqual(0.42 + drop * Math.cos(23 * RAD) - 0.8 + 1e-12);
  expect(number(given, 'atCrankAngle')).toBeCloseTo(41.2, 2);
});

test('readings a whole cycle on are the same readings', () => {
  const { profile: _card, ...rest } = body();
  const later = readings(-40, 250, 2).map((each) => ({
    ...each,
    crankAngle: deg(each.crankAngle.value + 720),
  }));
  expect(number({ ...rest, lifts: later }, 'margin')).toBeCloseTo(
    number({ ...rest, lifts: readings(-40, 250, 2) }, 'margin'),
    10,
  );
});

describe('input that can’t be', () => {
  const { profile: _card, ...rest } = body();
  test('neither a card nor readings, or both, or one reading', () => {
    expect(refused(rest)).toEqual(['/profile required']);
    expect(refused(body({ lifts: readings(0, 20, 2) }))).toEqual(['/lifts not-allowed']);
    expect(refused({ ...rest, lifts: readings(0, 0, 2) })).toEqual(['/lifts required']);
    expect(refused({ ...rest, profile: 3, ratio: 0 })).toEqual([
      '/profile not-allowed',
      '/ratio out-of-range',
    ]);
  });
  test('a card that no lobe has, at its place within', () => {
    const card = profile(0.5, 106, 721);
    expect(refused(body({ profile: card }))).toEqual(['/profile/durations/0/duration impossible-input']);
    const { centreline: _gone, ...half } = profile(0.5, 106, 280);
    expect(refused(body({ profile: { ...half, side: 'intake' } }))).toEqual([
      '/profile/centreline required',
      '/profile/side unknown-field',
    ]);
  });
  test('readings that repeat an angle, or pass a cycle', () => {
    const lifts = [0, 4, 4, 8].map((angle) => ({ crankAngle: deg(angle), lift: inches(0.1) }));
    expect(refused({ ...rest, lifts })).toEqual(['/lifts/2/crankAngle impossible-input']);
    const long = [-400, 0, 400].map((angle) => ({ crankAngle: deg(angle), lift: inches(0.1) }));
    expect(refused({ ...rest, lifts: long })).toEqual(['/lifts/2/crankAngle impossible-input']);
  });
  test('a lash that takes up the lift, a rod too short, a valve lying down', () => {
    expect(refused(body({ lash: inches(0.5) }))).toEqual(['/lash impossible-input']);
    expect(refused(body({ rodLength: inches(1.7) }))).toEqual([
      '/rodLength impossible-input',
      '/stroke impossible-input',
    ]);
    expect(refused(body({ valveAngle: deg(90) }))).toEqual(['/valveAngle impossible-input']);
    expect(refused(body({ valveAngle: deg(-5), closedGapAtTdc: inches(-0.1) }))).toEqual([
      '/valveAngle out-of-range',
      '/closedGapAtTdc out-of-range',
    ]);
  });
  test('under fire', () => {
    expectSoundUnderFire(computation, body({ lash: inches(0.01), advance: deg(2), pinOffset: inches(0.03) }));
  }, 60_000);
});

test('2 000 readings and the finest card are answered in bounded time', () => {
  const { profile: _card, ...rest } = body();
  const lifts = Array.from({ length: 2000 }, (_, index) => ({
    crankAngle: deg(-360 + index * 0.36),
    lift: inches(0.2 + 0.1 * Math.sin(index)),
  }));
  expect(Number.isFinite(number({ ...rest, lifts }, 'margin'))).toBe(true);
});

test('the worked example (SciPy: PchipInterpolator and the root of the slope)', () => {
  expectSame(run(registered.example.inputs).result, registered.example.result);
});
