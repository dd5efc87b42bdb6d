import { z } from 'zod';
import { BEFORE_STOP } from './before-stop.ts';
import { CAN_BE } from './can-be.ts';
import { entered } from './entered.ts';
import { choice } from './fields.ts';
import { gauged } from './gauged.ts';
import { bare } from './number-fields.ts';
import { words } from './texts.ts';
import { keysOf, VALVES } from './words.ts';

export const ENGINE_HEAT = { 'not-said': 'Not said', cold: 'Cold', hot: 'Hot' } as const;
export const LASH_MOMENTS = {
  found: 'Found so: as it stood, or after locking',
  set: 'Set to this, and left so',
} as const;
export const NUT_STATES = {
  'not-looked': 'Not looked at',
  held: 'Had not moved',
  moved: 'Had moved',
} as const;

const DAY = /^\d{4}-\d{2}-\d{2}$/;
const isDay = (text: string): boolean => {
  const at = new Date(`${text}T00:00:00Z`);
  return DAY.test(text) && !Number.isNaN(at.getTime()) && at.toISOString().startsWith(text);
};

/** One line of a valve's lash log. */
export const newLashLine = z.strictObject({
  cylinder: bare('cylinder number, in the engine’s own numbering', { least: 1, most: 16, whole: true }),
  valve: choice(keysOf(VALVES), 'which valve of the cylinder'),
  lash: gauged('the gap at the valve: one figure, or the two gauges it lies between', CAN_BE.lashFound),
  shim: entered('length', 'the shim that is in with that gap, measured itself', CAN_BE.lashShim, {
    sign: 'positive',
  }).optional(),
  moment: choice(keysOf(LASH_MOMENTS), 'found so, or set to this').default('found'),
  engine: choice(keysOf(ENGINE_HEAT), 'engine cold or hot').default('not-said'),
  nut: choice(
    keysOf(NUT_STATES),
    'whether the adjuster (a nut, a lock nut, a bolt, a pivot) or its lock had moved',
  ).default('not-looked'),
  readOn: words('the day it was read or set, as 2026-03-14; left out, today', 10)
    .refine((text) => text === '' || isDay(text), {
      error: 'must be a day such as 2026-03-14',
      params: { fault: 'not-allowed' },
    })
    .default(''),
  doneBy: words('who read or set it, where that was somebody else', 100).default(''),
  ...BEFORE_STOP,
});
export type NewLashLine = z.output<typeof newLashLine>;

/** The same typed at a form: growth is judged on whether it was found so or set, which nobody is taken to have said. */
export const typedLashLine = newLashLine.extend({
  moment: choice(keysOf(LASH_MOMENTS), 'found so, or set to this'),
});
