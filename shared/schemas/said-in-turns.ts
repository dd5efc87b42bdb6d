import { z } from 'zod';
import { memberOf } from '../member.ts';
import type { FieldRange } from '../quantities/field-range.ts';
import { saysTurns } from '../quantities/turns-reading.ts';
import { isUnit, type Unit } from '../quantities/units.ts';
import { type Entered, entered } from './entered.ts';
import { fieldInfo } from './field-info.ts';
import type { QuantityRange } from './read-quantity.ts';

/** A count of turns as it was said: a length once the dial is known. */
export interface SaidInTurns {
  readonly typed: string;
  readonly inTurns: true;
}

/** What was typed, from a text or from `{ typed, assume }`. */
export function textOf(raw: unknown): { text: string; assume?: Unit } | undefined {
  if (typeof raw === 'string') return { text: raw };
  if (typeof raw !== 'object' || raw === null) return undefined;
  const typed = memberOf(raw, 'typed');
  const assume = memberOf(raw, 'assume');
  if (typeof typed !== 'string' || typeof assume !== 'string' || !isUnit(assume)) return undefined;
  return { text: typed, assume };
}

/** Turns are counted, and the dial is not said along with them. */
export function turnsIn(raw: unknown): SaidInTurns | undefined {
  const typed = textOf(raw)?.text ?? '';
  if (!saysTurns(typed)) return undefined;
  const ownDial = memberOf(raw, 'perTurn') !== undefined;
  return ownDial ? undefined : { typed, inTurns: true };
}

/** A length that is kept as it was made, or turns where the dial is known elsewhere: `5 turns 60`. */
export function enteredOrTurns(description: string, canBe: FieldRange, range: QuantityRange = {}) {
  const length = entered('length', description, canBe, range);
  const schema = z
    .unknown()
    .transform((raw, ctx): Entered | SaidInTurns => {
      const turns = turnsIn(raw);
      if (turns !== undefined) return turns;
      const read = length.safeParse(raw);
      if (read.success) return read.data;
      for (const issue of read.error.issues) ctx.addIssue({ ...issue, path: [...issue.path] });
      return z.NEVER;
    })
    .meta({ ...length.meta(), description: `${description}; turns are read on the dial of the set-up` });
  fieldInfo.add(schema, { control: 'quantity', dimension: 'length', canBe });
  return schema;
}
