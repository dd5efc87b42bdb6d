import { z } from 'zod';
import type { FaultCode } from '../problems/faults.ts';
import { BEFORE_STOP } from './before-stop.ts';
import { CAN_BE } from './can-be.ts';
import { entered, inches } from './entered.ts';
import { choice } from './fields.ts';
import { bare } from './number-fields.ts';
import { struckOrWhole } from './struck-or-whole.ts';
import { someWords } from './texts.ts';
import { keysOf, SPRINGS, VALVES, type ValveGear } from './words.ts';

/** Where the middle of a mark sits on the stem’s end. */
export const MARK_SIDES = {
  centred: 'Centred',
  valley: 'Toward the valley',
  exhaust: 'Toward the exhaust side',
  sideways: 'Sideways, out of line with the rocker',
} as const;
/** The same of a follower: its pivot is at the one end, and neither valley nor pushrod is there to go by. */
const FOLLOWER_SIDES: Readonly<Record<keyof typeof MARK_SIDES, string>> = {
  centred: 'Centred',
  valley: 'Toward the pivot',
  exhaust: 'Away from the pivot',
  sideways: 'Sideways, out of line with the follower',
};
/** In the words of the valve gear. */
export const markSidesOf = (
  gear: ValveGear | undefined,
): Readonly<Record<keyof typeof MARK_SIDES, string>> =>
  gear === 'finger-follower' ? FOLLOWER_SIDES : MARK_SIDES;
/** A mark as it was read back, in the words of the valve gear. */
export const markSaidOf = (readAs: string, gear: ValveGear | undefined): string =>
  keysOf(MARK_SIDES).reduce(
    (text, side) => text.replace(MARK_SIDES[side].toLowerCase(), markSidesOf(gear)[side].toLowerCase()),
    readAs,
  );
export const MARK_FOUND = {
  'not-said': 'Not said',
  'fresh-ink': 'Fresh ink, turned over by hand',
  'after-running': 'Found after running',
} as const;
/** Two lengths of one pushrod: they differ by about .017 in. */
export const PUSHROD_OVER = {
  'not-said': 'Not said',
  ends: 'Over its ends',
  gauge: 'Gauge length',
} as const;

/** No stem or lash cap is as thick as this. */
const WIDEST = 1;

const fields = {
  width: entered('length', 'width of the mark, along the rocker', CAN_BE.markWidth),
  side: choice(keysOf(MARK_SIDES), 'where the middle of the mark sits'),
  off: entered(
    'length',
    'how far the middle of the mark is from the middle of the stem; not for a centred one, and left out where only its side is known',
    CAN_BE.markOff,
  ).optional(),
  pushrod: entered('length', 'length of the pushrod it was made with', CAN_BE.pushrod).optional(),
  pushrodOver: choice(keysOf(PUSHROD_OVER), 'over what that length is taken').default('not-said'),
  shims: entered('length', 'shims under the rocker stand when it was made; zero for none', CAN_BE.shims, {
    sign: 'not-negative',
  }).optional(),
  stem: entered('length', 'diameter of the stem’s end, or of its lash cap', CAN_BE.stem).optional(),
  spring: choice(keysOf(SPRINGS), 'spring on the valve').default('not-said'),
  found: choice(keysOf(MARK_FOUND), 'how the mark came about').default('not-said'),
};

interface Ctx {
  addIssue(issue: { code: 'custom'; message: string; path: string[]; params: { fault: FaultCode } }): void;
}

type Whole = z.output<z.ZodObject<typeof fields>>;
type Fields = { readonly [Name in 'width' | 'side' | 'off']?: Whole[Name] | undefined };

/** A centred mark has no distance; of another the side alone may be known. Nothing is wider than a stem. */
function sidesAgree({ width, side, off }: Fields, ctx: Ctx): void {
  const refuse = (field: string, fault: FaultCode, message: string) =>
    ctx.addIssue({ code: 'custom', message, path: [field], params: { fault } });
  if (width !== undefined && inches(width) > WIDEST)
    refuse('width', 'out-of-range', `is ${width.readAs}: no stem is wider than 1 in`);
  if (off !== undefined && inches(off) > WIDEST)
    refuse('off', 'out-of-range', `is ${off.readAs}: no stem is wider than 1 in`);
  if (side === 'centred' && off !== undefined)
    refuse('off', 'not-allowed', 'must be left out for a centred mark; say to which side it sits');
}

export const newTipMark = z
  .strictObject({
    cylinder: bare('cylinder number, in the engine’s own numbering', { least: 1, most: 16, whole: true }),
    valve: choice(keysOf(VALVES), 'which valve of the cylinder'),
    ...fields,
    ...BEFORE_STOP,
  })
  .superRefine(sidesAgree);
export type NewTipMark = z.output<typeof newTipMark>;

/** The mark as it should be, whole; with nothing but the reason it is struck out. */
export const correctTipMark = z
  .strictObject({
    ...fields,
    width: fields.width.optional(),
    side: fields.side.optional(),
    reason: someWords('why the mark is replaced', 500),
  })
  .superRefine((given, ctx) => {
    sidesAgree(given, ctx);
    struckOrWhole(given, ctx, 'width');
    if (given.width !== undefined && given.side === undefined)
      ctx.addIssue({
        code: 'custom',
        message: 'is missing: where the middle of the mark sits',
        path: ['side'],
        params: { fault: 'required' },
      });
  });
export type CorrectTipMark = z.output<typeof correctTipMark>;
