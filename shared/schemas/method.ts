import { z } from 'zod';
import { entered } from './entered.ts';
import { choice } from './fields.ts';
import { bare, ratio } from './number-fields.ts';
import {
  ALIGNMENTS,
  keysOf,
  LASH_STATES,
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
  lashSetting: entered('length', 'the lash left in, where it is set', { sign: 'not-negative' }).optional(),
  restsOn: choice(keysOf(RESTS_ON), 'what the indicator’s tip rests on at the valve'),
  alignment: choice(keysOf(ALIGNMENTS), 'how the plunger stands to the stem'),
  graduation: entered('length', 'smallest division of the dial'),
  perTurn: entered('length', 'travel of the big hand per turn'),
  travel: entered('length', 'whole travel of the indicator').optional(),
  pushedIn: entered('length', 'how far the plunger was pushed in before zeroing', {
    sign: 'not-negative',
  }).optional(),
  errorLimit: entered('length', 'error limit of an indicator reading on this engine, half-width', {
    sign: 'not-negative',
  }),
  lobeSource: choice(keysOf(LOBE_SOURCES), 'where the lobe lift comes from'),
  lobeErrorLimit: entered('length', 'error limit of the lobe lift, half-width', { sign: 'not-negative' }),
});
export type Method = z.output<typeof method>;

/** A set-up: which valve, which arm, and the method. */
export const newSetUp = z.strictObject({
  cylinder: bare('cylinder number, in the engine’s own numbering', { least: 1, most: 16, whole: true }),
  valve: choice(keysOf(VALVES), 'which valve of the cylinder'),
  armId: z.uuid().optional().meta({ description: 'the arm on this valve, if it is on record' }),
  method,
});
export type NewSetUp = z.output<typeof newSetUp>;

/** Ratios that a reading is set against unless the call names others: common nominals, no published source. */
export const NOMINAL_RATIOS = [1.45, 1.5, 1.52, 1.55, 1.6, 1.65, 1.7, 1.75, 1.8] as const;
export const nominalRatio = ratio('a nominal ratio');
