import { describe, expect, test } from 'vitest';
import { computation } from '../../../server/mechanics/computations/lobe-profile.ts';
import { body, CARD, type Pair, refused, run } from '../helpers/lobe-card.ts';
import { deg } from '../helpers/quantities.ts';
import { partOf } from '../helpers/runner.ts';
import { describeSaid } from '../helpers/said.ts';

describe('what a card can’t be', () => {
  const cards = (durations: readonly Pair[], more: object = {}) => refused(body(0.35, durations, [0], more));

  test('a peak a whole turn from top dead centre is taken', () => {
    expect(cards([[0.05, 230]], { centreline: deg(360) })).toEqual([]);
  });

  test('all that is wrong is told at once', () => {
    expect(
      cards(
        [
          [0.006, 721],
          [0.4, 100],
        ],
        { centreline: deg(361) },
      ),
    ).toEqual([
      '/centreline impossible-input',
      '/durations/0/duration impossible-input',
      '/durations/1/atLift impossible-input',
    ]);
  });

  test('a duration that leaves no base circle is blamed at its own place in the list', () => {
    expect(
      cards([
        [0.2, 148],
        [0.1, 700],
      ]),
    ).toEqual(['/durations/1/duration impossible-input']);
  });

  test('a hundred faults are told, not all of a long card', () => {
    const many = Array.from({ length: 200 }, (_, index): Pair => [0.4 + index / 1000, 100]);
    expect(cards(many)).toHaveLength(100);
  });
});

describe('the law is said', () => {
  const lawOf = (durations: readonly Pair[]) => partOf(run(body(0.35, durations, [0])).result, 'law');
  test('of one duration, and of several how many', () => {
    expect(lawOf([[0.05, 230]])).toMatch(/^4-5-6-7 polynomial on each flank, seat duration fitted/);
    expect(lawOf([[0, 280]])).toMatch(/^4-5-6-7 polynomial on each flank, seat duration as given/);
    expect(lawOf(CARD)).toMatch(/through the 3 durations given/);
  });
});

describeSaid(computation, {
  assumes: [
    ['any card', body(0.35, CARD, [0]), ['flanks alike', 'between the durations', 'lash not taken off']],
  ],
});
