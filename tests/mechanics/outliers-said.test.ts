import { describe, expect, test } from 'vitest';
import { computation } from '../../server/mechanics/computations/outliers.ts';
import { medianMadScores } from '../../server/mechanics/statistics/median-mad.ts';
import { describeSaid } from './helpers/said.ts';

const values = [1.5, 1.51, 1.49, 1.52, 1.6];
const grubbs = { values, method: 'grubbs' };
const median = { values, method: 'median-mad' };
const alike = (other: number) => [1.5, 1.5, 1.5, 1.5, other];

describeSaid(computation, {
  assumes: [
    ['nothing told', grubbs, ['in one unit', 'both sides', 'tested alone', 'one time in twenty']],
    ['a side', { ...grubbs, tail: 'upper' }, ['in one unit', 'tested alone', 'one time in twenty']],
    ['a chance', { ...grubbs, alpha: 0.05 }, ['in one unit', 'both sides', 'tested alone']],
    ['the median', median, ['in one unit', 'both sides', 'past 3.5']],
    ['the median, one side', { ...median, tail: 'upper' }, ['in one unit', 'past 3.5']],
    [
      'more than half alike',
      { ...median, values: alike(1.6) },
      ['in one unit', 'both sides', 'past 3.5', 'mean distance'],
    ],
    [
      'all alike',
      { ...median, values: alike(1.5) },
      ['in one unit', 'both sides', 'past 3.5', 'all values are alike'],
    ],
  ],
});

describe('what the scatter is taken from', () => {
  test.each([
    [values, 'median'],
    [alike(1.6), 'mean'],
    [alike(1.5), 'none'],
  ] as const)('%j: %s', (list, wanted) => {
    expect(medianMadScores([...list], 'two').scatter).toBe(wanted);
  });

  test('all alike, every score is zero and none is flagged', () => {
    expect(medianMadScores(alike(1.5), 'two')).toMatchObject({ scores: [0, 0, 0, 0, 0], flagged: [] });
  });
});
