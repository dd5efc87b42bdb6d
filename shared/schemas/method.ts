import { z } from 'zod';
import { BEFORE_STOP } from './before-stop.ts';
import { CAN_BE } from './can-be.ts';
import { entered } from './entered.ts';
import { choice } from './fields.ts';
import { bare } from './number-fields.ts';
import { someWords } from './texts.ts';
import { came, evenIfFaulty, faultAt } from './two-forms.ts';
import {
  ALIGNMENTS,
  keysOf,
  LASH_STATES,
  LIFT_TOOLS,
  LIFTERS,
  LOBE_SOURCES,
  RESTS_ON,
  SPRINGS,
  VALVES,
} from './words.ts';

/** How a set of readings is taken. It is stored with the readings: method is part of the measurement. */
export const method = z.strictObject({
  spring: choice(keysOf(SPRINGS), 'spring on the valve while reading'),
  lifter: choice(keysOf(LIFTERS), 'lifter under the pushrod while reading'),
  lash: choice(keysOf(LASH_STATES), 'lash while reading'),
  lashSetting: entered('length', 'the lash left in, where it is set', CAN_BE.lash, {
    sign: 'not-negative',
  }).optional(),
  tool: choice(keysOf(LIFT_TOOLS), 'what the valve lift is read with; left out, a dial indicator').optional(),
  restsOn: choice(keysOf(RESTS_ON), 'what the indicator’s tip rests on at the valve'),
  alignment: choice(keysOf(ALIGNMENTS), 'how the plunger stands to the stem'),
  graduation: entered('length', 'smallest division of the dial', CAN_BE.graduation),
  perTurn: entered('length', 'travel of the big hand per turn', CAN_BE.perTurn),
  travel: entered('length', 'whole travel of the indicator', CAN_BE.travel).optional(),
  pushedIn: entered('length', 'how far the plunger was pushed in before zeroing', CAN_BE.pushedIn, {
    sign: 'not-negative',
  }).optional(),
  errorLimit: entered(
    'length',
    'error limit of a reading on this engine, half-width; left out, as its tool may be',
    CAN_BE.errorLimit,
    { sign: 'not-negative' },
  ).optional(),
  lobeSource: choice(keysOf(LOBE_SOURCES), 'where the lobe lift comes from'),
  lobeErrorLimit: entered(
    'length',
    'error limit of the lobe lift, half-width; left out, as where it comes from may be',
    CAN_BE.errorLimit,
    { sign: 'not-negative' },
  ).optional(),
});
export type Method = z.output<typeof method>;

const cylinder = bare('cylinder number, in the engine’s own numbering', { least: 1, most: 16, whole: true });
const valve = choice(keysOf(VALVES), 'which valve of the cylinder');
const armId = z.uuid().optional().meta({ description: 'the arm on this valve, if it is on record' });

/** A set-up: which valve, which arm, and the method. */
export const newSetUp = z.strictObject({ cylinder, valve, armId, method, ...BEFORE_STOP });
export type NewSetUp = z.output<typeof newSetUp>;

/** Facts of a set-up that need not be known at all: what was said of them may turn out to be no more than a guess. */
export const MAY_BE_UNKNOWN = ['armId', 'lashSetting', 'travel', 'pushedIn'] as const;

const reason = someWords('what was said, and by whom', 500);

/** A set-up put right: only what was told later is given, and it holds for the readings already there. */
export const correctSetUp = z
  .strictObject({
    cylinder: cylinder.optional(),
    valve: valve.optional(),
    armId,
    method: method.partial().optional(),
    notKnown: z
      .array(choice(MAY_BE_UNKNOWN, 'a fact that is not known after all'))
      .max(MAY_BE_UNKNOWN.length)
      .optional()
      .meta({ description: 'facts that are not known after all' }),
    struck: z
      .literal(true)
      .optional()
      .meta({ description: 'it was begun by mistake: it is struck out, where no reading of it stands' }),
    reason,
  })
  .superRefine((_, ctx) => {
    const { value } = ctx;
    const given = Object.entries(value).filter(([name]) => name !== 'reason');
    const said = given.filter(([, part]) => typeof part !== 'object' || Object.keys(part ?? {}).length > 0);
    if (said.length === 0 && ctx.issues.length === 0)
      faultAt(ctx, ['method'], 'required', 'is missing: nothing is put right yet; change what was not so');
    if (came(ctx, 'struck') && said.length > 1)
      faultAt(ctx, ['struck'], 'not-allowed', 'goes with a reason alone: there is nothing left to put right');
  }, evenIfFaulty);

/** Why a set-up is struck out, as a form asks for it. */
export const strikeSetUp = z.strictObject({ reason });
export type SetUpSaid = Omit<z.output<typeof correctSetUp>, 'reason'>;

/** Ratios that a reading is set against unless the call names others: common nominals, no published source. */
export const NOMINAL_RATIOS = [1.45, 1.5, 1.52, 1.55, 1.6, 1.65, 1.7, 1.75, 1.8] as const;
