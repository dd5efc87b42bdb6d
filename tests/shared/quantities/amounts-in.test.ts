import { describe, expect, test } from 'vitest';
import { amountsIn } from '../../../shared/quantities/amounts-in.ts';

/** How callers say a lash: common practice, no source. */
describe('lengths in somebody’s own words', () => {
  test.each([
    ['.020 in', ['.020 in']],
    ['20 thou', ['20 thou = .020 in']],
    ['set with a .018 feeler', ['.018 in']],
    ['0.45 mm, he says', ['0.45 mm']],
    ['left in, 16 thou on the feeler', ['16 thou = .016 in']],
    ['.020 in, that is 20 thou', ['20 thou = .020 in']],
    ['between .018 and .020', ['.018 in', '.020 in']],
    ['pass 2 of 3', []],
    ['yes', []],
    ['read on the 14.3.2026 by two people', []],
    ['', []],
  ])('%s', (text, said) => {
    expect(amountsIn(text).map(({ readAs }) => readAs)).toEqual(said);
  });
});
