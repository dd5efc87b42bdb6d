import { z } from 'zod';
import type { FieldRange } from '../quantities/field-range.ts';
import { CAN_BE } from './can-be.ts';
import { type Entered, entered } from './entered.ts';
import { choice } from './fields.ts';
import { bare } from './number-fields.ts';
import { PART_KINDS, PART_TOOLS, type PartMeasured } from './part-words.ts';
import { heldBack, readOnceKnown } from './read-by-kind.ts';
import { struckOrWhole } from './struck-or-whole.ts';
import { someWords, words } from './texts.ts';
import { evenIfFaulty } from './two-forms.ts';
import { keysOf } from './words.ts';

/** What each size of a rocker, and of what it goes with, can be. */
export const PART_CAN_BE: Readonly<Record<PartMeasured, FieldRange>> = {
  'hole-across-trunnion': CAN_BE.hole,
  'width-across-trunnion': CAN_BE.trunnionWidth,
  'roller-diameter': CAN_BE.roller,
  'body-width': CAN_BE.bodyWidth,
  'pivot-to-tip': CAN_BE.partToTip,
  'pivot-to-cup': CAN_BE.partToCup,
  'stud-diameter': CAN_BE.stud,
  'stud-pitch': CAN_BE.pitch,
  'stem-diameter': CAN_BE.stemOfPart,
};

const sizeWithin = (canBe: FieldRange) =>
  entered(
    'length',
    'the size as read, for a size; for a pitch the pitch, such as 20 tpi, or the length that the threads were counted over',
    canBe,
    {},
    { threads: true, keepsOutside: true },
  );

const ANY_SIZE = sizeWithin(CAN_BE.partSize);
const sizes = new Map<string, ReturnType<typeof sizeWithin>>(
  Object.entries(PART_CAN_BE).map(([kind, canBe]) => [kind, sizeWithin(canBe)]),
);

const entry = {
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

export const newPartReading = z
  .strictObject({
    kind: choice(keysOf(PART_KINDS), 'what is read, seen or found written'),
    partId: z.uuid().optional().meta({ description: 'which part in the hand; left out, the first' }),
    size: heldBack({
      like: ANY_SIZE,
      canBe: CAN_BE.partSize,
      byKind: Object.values(PART_CAN_BE),
      standIn: (): Entered => ({ typed: '', value: 0, unit: 'in', readAs: '' }),
    }).optional(),
    ...entry,
    tool: tool.default('not-said'),
  })
  .superRefine(
    readOnceKnown('size', ({ kind }) => sizes.get(kind) ?? ANY_SIZE),
    evenIfFaulty,
  );
export type NewPartReading = z.output<typeof newPartReading>;

/** With nothing in it but the reason the reading is struck out. */
export const correctPartReading = z
  .strictObject({
    size: ANY_SIZE.optional(),
    ...entry,
    tool: tool.optional(),
    reason: someWords('why the reading is replaced', 500),
  })
  .superRefine((given, ctx) => struckOrWhole(given, ctx, 'size', ['word', 'mark']));
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
