import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { lobeFlank } from '../../server/mechanics/lobe/lobe-flank.ts';
import { body, CARD, liftAt, number, numbers, type Pair, RAD } from './helpers/lobe-card.ts';
import { expectNear } from './helpers/near.ts';
import { deg, mm, quantity } from './helpers/quantities.ts';

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

  test('falls steadily from the nose, with a continuous slope that is zero at nose and seat', () => {
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
