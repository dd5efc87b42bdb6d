import { describe, expect, test } from 'vitest';
import { computation } from '../../server/mechanics/computations/lobe-profile.ts';
import { body, CARD, liftAt, number, type Pair, refused } from './helpers/lobe-card.ts';
import { expectNear } from './helpers/near.ts';
import { deg, inches } from './helpers/quantities.ts';
import { expectSoundUnderFire } from './helpers/under-fire.ts';

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
