import { z } from 'zod';
import type { FaultCode } from '../problems/faults.ts';
import { BEFORE_STOP } from './before-stop.ts';
import { CAN_BE } from './can-be.ts';
import { crankAngle } from './crank-angle.ts';
import { entered } from './entered.ts';
import { choice, listOf } from './fields.ts';
import { gauged } from './gauged.ts';
import { bare } from './number-fields.ts';
import { SHEET_ARMS, TOOLS } from './sheet.ts';
import { someWords } from './texts.ts';
import { keysOf, LASH_STATES, LIFTERS, SPRINGS, VALVES } from './words.ts';

/** More than any wheel and patience give. */
const MOST_READINGS = 400;

const reading = z.strictObject({
  crankAngle: crankAngle('where it was read'),
  gap: gauged('the gap there along the valve: one figure, or the two gauges it lies between', CAN_BE.gap),
});
export type ScanReadingInput = z.output<typeof reading>;

const readings = listOf(
  reading,
  'gaps at one crank angle after another, in any order and steps',
  1,
  MOST_READINGS,
);

const place = {
  cylinder: bare('cylinder number, in the engine’s own numbering', { least: 1, most: 16, whole: true }),
  valve: choice(keysOf(VALVES), 'which valve of the cylinder'),
};

const lashSetting = entered('length', 'the lash that was in it, where it was set', CAN_BE.lash, {
  sign: 'not-negative',
});

const how = {
  spring: choice(keysOf(SPRINGS), 'spring on the valve while reading').default('not-said'),
  lifter: choice(keysOf(LIFTERS), 'lifter under the pushrod while reading').default('not-said'),
  lash: choice(keysOf(LASH_STATES), 'whether the lash was in the lift while reading').default('not-said'),
  lashSetting: lashSetting.optional(),
  tool: choice(keysOf(TOOLS), 'what the gaps were read with').default('not-said'),
  arms: choice(keysOf(SHEET_ARMS), 'with which arms').default('these'),
};

interface Ctx {
  addIssue(issue: { code: 'custom'; message: string; path: string[]; params: { fault: FaultCode } }): void;
}

/** A setting goes with a lash that was set, and with no other. */
function settingAgrees(
  given: { readonly lash?: string | undefined; readonly lashSetting?: unknown },
  ctx: Ctx,
) {
  if (given.lashSetting === undefined || given.lash === 'set' || given.lash === undefined) return;
  ctx.addIssue({
    code: 'custom',
    message: 'is given, and the lash is not said to be set: say “set”, or leave the figure out',
    path: ['lashSetting'],
    params: { fault: 'not-allowed' },
  });
}

/** A scan of one valve, all of it read the same way. */
export const newGapScan = z
  .strictObject({ ...place, ...how, readings, ...BEFORE_STOP })
  .superRefine(settingAgrees);
export type NewGapScan = z.output<typeof newGapScan>;

const text = someWords('one row for each reading: crank angle, gap; a heading row may stand first', 20_000);
const unit = choice(['in', 'mm', 'thou'], 'the unit of gaps that name none').default('in');

/** The same as text from a table. */
export const pasteGapScan = z
  .strictObject({
    ...place,
    ...how,
    text,
    unit,
    keep: z.boolean().default(false).meta({ description: 'keep the scan; left out, it is only looked at' }),
    ...BEFORE_STOP,
  })
  .superRefine(settingAgrees);
export type PasteGapScan = z.output<typeof pasteGapScan>;

/** What of a scan is put right; the rest stays as it was. With nothing but the reason it is struck out. */
export const correctGapScan = z
  .strictObject({
    cylinder: place.cylinder.optional(),
    valve: place.valve.optional(),
    spring: how.spring.unwrap().optional(),
    lifter: how.lifter.unwrap().optional(),
    lash: how.lash.unwrap().optional(),
    lashSetting: lashSetting.optional(),
    tool: how.tool.unwrap().optional(),
    arms: how.arms.unwrap().optional(),
    readings: readings.optional(),
    text: text.optional(),
    unit,
    reason: someWords('why the scan is replaced', 500),
  })
  .superRefine((given, ctx) => {
    settingAgrees(given, ctx);
    if (given.readings !== undefined && given.text !== undefined)
      ctx.addIssue({
        code: 'custom',
        message: 'is given beside readings: one of the two',
        path: ['text'],
        params: { fault: 'not-allowed' },
      });
  });
export type CorrectGapScan = z.output<typeof correctGapScan>;
