import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { computation } from '../../server/mechanics/computations/lobe-profile.ts';
import { lobeFlank } from '../../server/mechanics/lobe/lobe-flank.ts';
import { motionLaw } from '../../server/mechanics/motion-laws/motion-law.ts';
import { expectNear, expectSame } from './helpers/near.ts';
import { deg, inches, mm, quantity } from './helpers/quantities.ts';
import { runner } from './helpers/runner.ts';
import { expectSoundUnderFire } from './helpers/under-fire.ts';

const { registered, run, number, numbers, refused } = runner(computation);
const RAD = Math.PI / 180;

type Pair = readonly [lift: number, duration: number];
const body = (
  lobeLift: number,
  durations: readonly Pair[],
  angles: readonly number[],
  more: object = {},
) => ({
  lobeLift: inches(lobeLift),
  centreline: deg(106),
  side: 'intake',
  durations: durations.map(([lift, duration]) => ({ atLift: inches(lift), duration: deg(duration) })),
  crankAngles: { values: angles, unit: 'deg' },
  ...more,
});
const liftAt = (given: object, angle: number): number =>
  number({ ...given, crankAngles: [deg(angle)] }, 'lifts.0');

describe('one duration: the 4-5-6-7 polynomial', () => {
  test('seat duration 280: the law itself, .032076 at TDC, .072655 at 10, .131328 at 20 (worked out apart)', () => {
    const lifts = numbers(body(0.5, [[0, 280]], [0, 10, 20]), 'lifts');
    [0.032076, 0.072655, 0.131328].forEach((wanted, index) => {
      expect(lifts[index]).toBeCloseTo(wanted, 6);
    });
  });

  test('at any lift stated, one law: scaled so that it passes through the point', () => {
    const law = motionLaw('4-5-6-7');
    fc.assert(
      fc.property(
        fc.double({ min: 0.05, max: 0.9, noNaN: true }),
        fc.double({ min: 100, max: 340, noNaN: true }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        (phase, seat, share) => {
          // A lobe of the law with this seat duration has this duration at this lift.
          const pair = [0.4 * law.at(phase).s, seat * (1 - phase)] as const;
          const given = body(0.4, [pair], []);
          const away = (1 - share) * (seat / 2);
          for (const angle of [106 + away, 106 - away]) {
            expect(Math.abs(liftAt(given, angle) - 0.4 * law.at(share).s)).toBeLessThan(2e-10);
          }
        },
      ),
    );
  });
});

const CARD: readonly Pair[] = [
  [0.006, 280],
  [0.05, 230],
  [0.2, 148],
];

/** Any card that a symmetric lobe can have. */
const cards = fc
  .record({
    lobeLift: fc.double({ min: 0.1, max: 0.6, noNaN: true }),
    lifts: fc.uniqueArray(fc.integer({ min: 1, max: 97 }), { minLength: 1, maxLength: 12 }),
    falls: fc.array(fc.double({ min: 2, max: 25, noNaN: true }), { minLength: 12, maxLength: 12 }),
    centreline: fc.double({ min: 90, max: 130, noNaN: true }),
    side: fc.constantFrom('intake', 'exhaust'),
  })
  .map(({ lobeLift, lifts, falls, centreline, side }) => {
    let duration = 20;
    const pairs = lifts
      .toSorted((a, b) => b - a)
      .map((share, index): Pair => {
        duration += falls[index] ?? 1;
        return [(lobeLift * share) / 100, duration];
      });
    return { lobeLift, pairs, centreline, peak: side === 'intake' ? centreline : -centreline, side };
  })
  // A lift near the nose held for long asks for more than a cycle of seat duration; that is refused elsewhere.
  .filter(({ pairs, lobeLift }) => pairs.every(([lift, duration]) => lift / lobeLift < 0.9 || duration < 60));

describe('any card', () => {
  const given = ({
    lobeLift,
    pairs,
    centreline,
    side,
  }: {
    lobeLift: number;
    pairs: readonly Pair[];
    centreline: number;
    side: string;
  }) => body(lobeLift, pairs, [0], { centreline: deg(centreline), side });

  test('every duration of it is met, on both flanks', () => {
    fc.assert(
      fc.property(cards, (card) => {
        expect(number(given(card), 'fitError')).toBeLessThan(1e-12);
        for (const [lift, duration] of card.pairs) {
          for (const way of [-1, 1]) {
            expectNear(liftAt(given(card), card.peak + (way * duration) / 2), lift, 1e-9);
          }
        }
        expectNear(liftAt(given(card), card.peak), card.lobeLift, 1e-12);
      }),
      { numRuns: 60 },
    );
  });

  test('falls steadily from the nose, with a continuous slope that is nought at nose and seat', () => {
    fc.assert(
      fc.property(cards, (card) => {
        const step = 0.25;
        const angles = Array.from({ length: 1441 }, (_, index) => card.peak + index * step);
        const lifts = numbers({ ...given(card), crankAngles: { values: angles, unit: 'deg' } }, 'lifts');
        const falls = lifts.slice(1).map((lift, index) => (lifts[index] ?? 0) - lift);
        expect(Math.min(...falls)).toBeGreaterThanOrEqual(-1e-12);
        expect(falls[0]).toBeLessThan(1e-3 * card.lobeLift);
        expect(lifts.at(-1)).toBe(0);
        const flank = lobeFlank({
          lobeLift: card.lobeLift,
          centreline: 0,
          durations: card.pairs.map(([atLift, duration]) => ({ atLift, duration: duration * RAD })),
        });
        for (const joint of [0, flank.halfSeat, ...card.pairs.map((pair) => (pair[1] * RAD) / 2)]) {
          const [before, after] = [flank.slopeAt(joint - 1e-11), flank.slopeAt(joint + 1e-11)];
          expect(Math.abs(after - before)).toBeLessThan(1e-5);
        }
        expect(Math.abs(flank.slopeAt(0))).toBe(0);
        expect(Math.abs(flank.slopeAt(flank.halfSeat))).toBe(0);
      }),
      { numRuns: 40 },
    );
  });

  test('the cycle comes round every 720°, and the flanks mirror each other', () => {
    fc.assert(
      fc.property(cards, fc.double({ min: -300, max: 300, noNaN: true }), (card, away) => {
        const here = liftAt(given(card), card.peak + away);
        for (const same of [card.peak - away, card.peak + away + 720, card.peak + away - 720]) {
          expect(Math.abs(liftAt(given(card), same) - here)).toBeLessThan(1e-9);
        }
      }),
      { numRuns: 60 },
    );
  });

  test('the order of the durations and their unit do not matter', () => {
    const angles = [-20, 0, 20, 60, 106, 180];
    const one = numbers(body(0.35, CARD, angles), 'lifts');
    const turned = numbers(body(0.35, CARD.toReversed(), angles), 'lifts');
    const metric = {
      ...body(0.35, [], angles),
      lobeLift: mm(8.89),
      durations: CARD.map(([lift, duration]) => ({
        atLift: quantity(lift * 1000, 'thou'),
        duration: deg(duration),
      })),
    };
    expect(turned).toEqual(one);
    numbers(metric, 'lifts').forEach((lift, index) => {
      expectNear(lift, one[index] ?? Number.NaN, 1e-9);
    });
  });
});

describe('several points of one known lobe give that lobe back', () => {
  test('points of the 4-5-6-7 law', () => {
    const law = motionLaw('4-5-6-7');
    const pairs = [0.1, 0.3, 0.45, 0.7].map((phase): Pair => [0.35 * law.at(phase).s, 290 * (1 - phase)]);
    for (let away = 0; away <= 150; away += 1) {
      const wanted = away < 145 ? 0.35 * law.at(1 - away / 145).s : 0;
      expect(Math.abs(liftAt(body(0.35, pairs, []), 106 + away) - wanted)).toBeLessThan(1e-9);
    }
  });

  test('points of other laws, every .025 of lift: within .001 in between them', () => {
    for (const name of ['cycloidal', 'modified-sine', '3-4-5'] as const) {
      const law = motionLaw(name);
      const phases = Array.from({ length: 13 }, (_, index) => 0.1 + index * 0.065);
      const pairs: Pair[] = [
        [0, 290],
        ...phases.map((phase): Pair => [0.35 * law.at(phase).s, 290 * (1 - phase)]),
      ];
      for (let away = 0; away <= 145; away += 1) {
        const wanted = 0.35 * law.at(1 - away / 145).s;
        expect(Math.abs(liftAt(body(0.35, pairs, []), 106 + away) - wanted)).toBeLessThan(0.001);
      }
    }
  });
});

test('an exhaust peaks before top dead centre, an intake after', () => {
  expectNear(liftAt(body(0.35, CARD, [], { side: 'exhaust' }), -106), 0.35);
  expect(liftAt(body(0.35, CARD, [], { side: 'exhaust' }), 106)).toBe(0);
});

describe('input that can’t be', () => {
  const cards = (durations: readonly Pair[], more: object = {}) => refused(body(0.35, durations, [0], more));
  test('durations that do not fall with rising lift', () => {
    const wanted = ['/durations/1/duration impossible-input'];
    expect(
      cards([
        [0.006, 280],
        [0.05, 280],
      ]),
    ).toEqual(wanted);
    expect(
      cards([
        [0.006, 280],
        [0.05, 290],
        [0.2, 150],
      ]),
    ).toEqual(wanted);
    expect(
      cards([
        [0.05, 230],
        [0.006, 220],
      ]),
    ).toEqual(['/durations/0/duration impossible-input']);
  });
  test('a lift stated at or over the lobe lift, or twice; its neighbours are not blamed', () => {
    expect(
      cards([
        [0.35, 100],
        [0.05, 230],
      ]),
    ).toEqual(['/durations/0/atLift impossible-input']);
    expect(
      cards([
        [0.05, 230],
        [0.36, 300],
      ]),
    ).toEqual(['/durations/1/atLift impossible-input']);
    expect(
      cards([
        [0.05, 230],
        [0.05, 220],
      ]),
    ).toEqual(['/durations/1/atLift impossible-input']);
  });
  test('a duration over 720°, or so long that there is no base circle', () => {
    expect(cards([[0.006, 721]])).toEqual(['/durations/0/duration impossible-input']);
    expect(cards([[0, 720]])).toEqual([]);
    expect(cards([[0.1, 700]])).toEqual(['/durations/0/duration impossible-input']);
    expect(cards([[0.05, 230]], { centreline: deg(361) })).toEqual(['/centreline impossible-input']);
  });
  test('faults at their places', () => {
    expect(refused({})).toEqual([
      '/lobeLift required',
      '/centreline required',
      '/side required',
      '/durations required',
      '/crankAngles required',
    ]);
    expect(cards([])).toEqual(['/durations required']);
    const durations = [{ atLift: deg(1), duration: deg(0) }, { atLift: inches(-1) }, 3];
    expect(refused({ ...body(0.35, [], [0]), durations, centreline: deg(-106) })).toEqual([
      '/centreline out-of-range',
      '/durations/0/atLift wrong-dimension',
      '/durations/0/duration out-of-range',
      '/durations/1/atLift out-of-range',
      '/durations/1/duration required',
      '/durations/2 not-allowed',
    ]);
  });
  test('under fire', () => {
    expectSoundUnderFire(computation, body(0.35, CARD, [0, 10]));
    expectNear(liftAt(body(0.35, [[1e-300, 280]], []), 106), 0.35);
  }, 30_000);
  test('2 000 durations', () => {
    const many = Array.from({ length: 2000 }, (_, index): Pair => [(0.3 * index) / 2000, 300 - index / 10]);
    expect(number(body(0.35, many, [0]), 'fitError')).toBeLessThan(1e-12);
  });
});

test('the worked example', () => {
  expectSame(run(registered.example.inputs).result, registered.example.result);
});
