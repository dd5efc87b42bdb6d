import { z } from 'zod';
import { entered } from './entered.ts';
import { choice } from './fields.ts';
import { PART_KINDS } from './part-words.ts';
import { someWords, words } from './texts.ts';
import { keysOf } from './words.ts';

const entry = {
  size: entered('length', 'the size as read, for a size').optional(),
  word: words('what is seen: one of the words of that feature', 40).default(''),
  mark: words('the mark word for word, for a mark').default(''),
  place: words('where on the part, and how it is done: turned 90 degrees, underside, cast').default(''),
};

export const newPartReading = z.strictObject({
  kind: choice(keysOf(PART_KINDS), 'what is read, seen or found written'),
  ...entry,
});
export type NewPartReading = z.output<typeof newPartReading>;

/** With nothing in it but the reason the reading is struck out. */
export const correctPartReading = z.strictObject({
  ...entry,
  reason: someWords('why the reading is replaced', 500),
});
export type CorrectPartReading = z.output<typeof correctPartReading>;
