import { z } from 'zod';
import { CAN_BE } from './can-be.ts';
import { entered } from './entered.ts';
import { choice } from './fields.ts';
import { bare } from './number-fields.ts';
import { PART_KINDS, PART_TOOLS } from './part-words.ts';
import { someWords, words } from './texts.ts';
import { keysOf } from './words.ts';

const entry = {
  size: entered(
    'length',
    'the size as read, for a size; for a pitch the pitch, such as 20 tpi, or the length that the threads were counted over',
    CAN_BE.partSize,
    {},
    { threads: true, asksLater: true },
  ).optional(),
  count: bare('threads counted over that length, for the pitch alone', {
    least: 1,
    most: 200,
    whole: true,
  }).optional(),
  within: entered(
    'length',
    'how far off it may be, half-width; left out, as that tool may be',
    CAN_BE.errorLimit,
  ).optional(),
  word: words('what is seen: one of the words of that feature', 40).default(''),
  mark: words('the mark word for word, for a mark').default(''),
  place: words('where on the part, and how it was held: turned 90 degrees, underside, cast').default(''),
};
const tool = choice(keysOf(PART_TOOLS), 'what a size is read with; a guess is kept as a guess');

export const newPartReading = z.strictObject({
  kind: choice(keysOf(PART_KINDS), 'what is read, seen or found written'),
  partId: z.uuid().optional().meta({ description: 'which part in the hand; left out, the first' }),
  ...entry,
  tool: tool.default('not-said'),
});
export type NewPartReading = z.output<typeof newPartReading>;

/** With nothing in it but the reason the reading is struck out. */
export const correctPartReading = z.strictObject({
  ...entry,
  tool: tool.optional(),
  reason: someWords('why the reading is replaced', 500),
});
export type CorrectPartReading = z.output<typeof correctPartReading>;

const armOfPart = z
  .uuid()
  .optional()
  .meta({ description: 'which arm of the build it is, so that its marks and its valve are known' });

/** One more part in the hand. */
export const newHandPart = z.strictObject({
  name: someWords('what both sides call it: the odd one, from the box', 100),
  armId: armOfPart,
});

/** What a part is called and which arm it is, from now on. */
export const sayHandPart = z.strictObject({
  partId: z.uuid().optional().meta({ description: 'which part in the hand; left out, the first' }),
  name: someWords('what both sides call it from now on', 100),
  armId: armOfPart,
});
