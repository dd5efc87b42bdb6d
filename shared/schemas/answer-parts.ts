import { z } from 'zod';
import { fromSi, UNITS } from '../quantities/units.ts';
import { keysOf, VALVES } from './words.ts';

/** Parts that many JSON answers have in common. */
export const moment = z.iso.datetime();

const unitNames = z.enum(keysOf(Object.fromEntries(Object.keys(UNITS).map((unit) => [unit, unit]))));
export const quantityView = z.object({ value: z.number(), unit: unitNames });
/** A quantity as it was entered: what was typed, and what was understood. */
export const enteredView = quantityView.extend({ typed: z.string(), readAs: z.string() });
export const valveView = z.enum(keysOf(VALVES));

/** A length in SI as an answer has it. */
export const inInches = (si: number) => ({ value: fromSi(si, 'in').value, unit: 'in' as const });

/** JSON of the record that has a schema of its own elsewhere, or none: inputs of a computation, data of an event. */
export function jsonObject(stored: unknown): Record<string, unknown> {
  if (typeof stored !== 'object' || stored === null) throw new Error('stored JSON is no object');
  return Object.fromEntries(Object.entries(stored));
}
