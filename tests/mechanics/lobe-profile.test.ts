import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { motionLaw } from '../../server/mechanics/motion-laws/motion-law.ts';
import { body, CARD, liftAt, numbers, type Pair, registered, run } from './helpers/lobe-card.ts';
import { expectNear, expectSame } from './helpers/near.ts';

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

test('the worked example', () => {
  expectSame(run(registered.example.inputs).result, registered.example.result);
});
