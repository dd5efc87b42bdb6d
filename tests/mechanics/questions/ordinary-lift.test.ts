import { describe, expect, it } from 'vitest';
import { isOrdinary } from '../../../server/mechanics/questions/lifts.ts';
import { defaultTolerances } from '../../../server/mechanics/questions/tolerances.ts';
import type { QuestionInput } from '../../../server/mechanics/questions/types.ts';
import { fromCard } from './plain.ts';

const running: QuestionInput = { ...fromCard, spring: 'running' };
const set: QuestionInput = { ...fromCard, lash: 'set' };

/** Bands of common practice, no source: 2 % under, 4.5 % over, .040 of flex; and .005 for card and dial. */
describe('a lift that nothing need explain', () => {
  it.each([
    ['2 % and .005 under .560 on a light spring', 0.5439, fromCard, true],
    ['a hair more', 0.5437, fromCard, false],
    ['4.5 % and .005 over', 0.5901, fromCard, true],
    ['a hair more', 0.5903, fromCard, false],
    ['.040 under that on a running spring', 0.5039, running, true],
    ['a hair more', 0.5037, running, false],
    ['4.5 % over on a running spring', 0.5901, running, true],
    ['the lash of .016 under that where it was set', 0.5282, set, true],
    ['a hair more', 0.528, set, false],
  ])('%s', (_, lift, input, ordinary) => {
    expect(isOrdinary(input, defaultTolerances, lift)).toBe(ordinary);
  });

  it('is none where nothing is known to expect', () => {
    const { nominalRatio: _, cardRatio: __, ...rest } = fromCard;
    expect(isOrdinary(rest, defaultTolerances, 0.56)).toBe(false);
  });
});
