import { z } from 'zod';
import { defined } from '../defined.ts';
import type { FaultCode } from '../problems/faults.ts';
import { formatQuantity } from '../quantities/format.ts';
import { readNumber } from '../quantities/read-number.ts';
import { threadsPerInch } from '../quantities/threads-per-inch.ts';
import { type Dimension, isUnit, type Quantity, UNITS, type Unit, unitsOf } from '../quantities/units.ts';
import { fieldInfo } from './field-info.ts';
import { fromValueAndUnit, type QuantityRange } from './read-quantity.ts';

/** A quantity as somebody entered it: the words kept, beside what was understood, in the unit of the entry. */
export interface Entered extends Quantity {
  readonly typed: string;
  readonly readAs: string;
}

interface Turn {
  /** Travel of the big hand per turn, so that "3 turns 42" can be read. */
  readonly perTurn?: Quantity;
}

/** What the place of an entry tells of it. */
interface PlaceOfEntry {
  /** The least and the most that it can be there, SI: of two meanings the one within is meant. */
  readonly between?: readonly [least: number, most: number];
  /** `20 tpi` is a length: a pitch. */
  readonly threads?: boolean;
}

type Understood =
  | { ok: true; entered: Entered }
  | { ok: false; code: FaultCode; detail: string; at?: string };

function isWithin(
  quantity: Quantity | { readonly value: number },
  { between }: PlaceOfEntry,
): quantity is Quantity {
  if (between === undefined || !('unit' in quantity)) return false;
  const si = siOf(quantity);
  return si >= between[0] && si <= between[1];
}

function understandText(
  text: string,
  dimension: Dimension,
  assume: Unit | undefined,
  turn: Turn,
  place: PlaceOfEntry,
): Understood {
  const threads = place.threads === true ? threadsPerInch(text) : undefined;
  if (threads !== undefined)
    return {
      ok: true,
      entered: { typed: text, value: 1 / threads, unit: 'in', readAs: `${threads} threads to the inch` },
    };
  const read = readNumber(text, {
    kind: dimension,
    ...defined({ assume, perTurn: turn.perTurn }),
  });
  if (read.ok) {
    if (read.unit === undefined) return { ok: false, code: 'wrong-dimension', detail: 'needs a unit' };
    return { ok: true, entered: { typed: text, value: read.value, unit: read.unit, readAs: read.readAs } };
  }
  if (read.fault) return { ok: false, code: read.fault.code, detail: read.fault.detail };
  const [fitting, ...more] = read.ambiguities.flatMap(({ quantity, readAs }) =>
    isWithin(quantity, place) ? [{ ...quantity, typed: text, readAs }] : [],
  );
  if (fitting !== undefined && more.length === 0) return { ok: true, entered: fitting };
  const ways = read.ambiguities.map((each) => each.readAs).join(', or ');
  return {
    ok: false,
    code: 'not-allowed',
    detail: `can be read in more than one way: ${ways}. Write it with its unit`,
  };
}

/** Understands `".482 in"`, `{ value, unit }`, or what a form sends: `{ typed, assume, perTurn? }`. */
function understand(raw: unknown, dimension: Dimension, place: PlaceOfEntry): Understood {
  if (typeof raw === 'string') return understandText(raw, dimension, undefined, {}, place);
  if (typeof raw === 'number') {
    const units = unitsOf(dimension).join(', ');
    return { ok: false, code: 'wrong-dimension', detail: `is a bare number; give a unit: ${units}` };
  }
  if (typeof raw !== 'object' || raw === null || Array.isArray(raw)) {
    return {
      ok: false,
      code: 'not-a-number',
      detail: 'must be { "value", "unit" } or a text such as ".482 in"',
    };
  }
  const unknown = Object.keys(raw).find(
    (key) => !['value', 'unit', 'typed', 'assume', 'perTurn', 'readAs'].includes(key),
  );
  if (unknown !== undefined)
    return { ok: false, code: 'unknown-field', detail: 'is not a part of a quantity', at: unknown };
  const typed: unknown = Reflect.get(raw, 'typed');
  const assume: unknown = Reflect.get(raw, 'assume');
  if (typeof typed === 'string' && typeof assume === 'string' && isUnit(assume)) {
    const perTurn = z.object({
      value: z.number(),
      unit: z.custom<Unit>((unit) => typeof unit === 'string' && isUnit(unit)),
    });
    const turn = perTurn.safeParse(Reflect.get(raw, 'perTurn'));
    return understandText(typed, dimension, assume, turn.success ? { perTurn: turn.data } : {}, place);
  }
  const value: unknown = Reflect.get(raw, 'value');
  const unit: unknown = Reflect.get(raw, 'unit');
  const read = fromValueAndUnit(value, unit, dimension, { sign: 'any' });
  if (!read.ok)
    return {
      ok: false,
      code: read.code,
      detail: read.detail,
      ...defined({ at: read.at }),
    };
  if (typeof value !== 'number' || typeof unit !== 'string' || !isUnit(unit)) {
    return { ok: false, code: 'not-a-number', detail: 'must have a number as its value' };
  }
  const readAs = formatQuantity({ value, unit });
  return { ok: true, entered: { typed: typeof typed === 'string' ? typed : readAs, value, unit, readAs } };
}

/** JSON Schema of an entry: the value with its words, what a form sends, or a text. */
export function enteredJsonSchema(dimension: Dimension) {
  return {
    anyOf: [
      {
        type: 'object' as const,
        properties: {
          value: { type: 'number' as const },
          unit: { type: 'string' as const, enum: unitsOf(dimension) },
          typed: { type: 'string' as const },
          readAs: { type: 'string' as const },
        },
        required: ['value', 'unit'],
        additionalProperties: false,
      },
      {
        type: 'object' as const,
        properties: {
          typed: { type: 'string' as const, minLength: 1, maxLength: 200 },
          assume: { type: 'string' as const, enum: unitsOf(dimension) },
        },
        required: ['typed', 'assume'],
        additionalProperties: false,
      },
      { type: 'string' as const, minLength: 1, maxLength: 200 },
    ],
  };
}

/** An entry of `dimension` that is kept as it was made. */
export function entered(
  dimension: Dimension,
  description: string,
  range: QuantityRange = {},
  place: PlaceOfEntry = {},
) {
  const schema = z
    .unknown()
    .transform((raw, ctx): Entered => {
      const refuse = (fault: FaultCode, message: string, path: string[] = []): never => {
        ctx.addIssue({ code: 'custom', message, path, params: { fault } });
        return z.NEVER;
      };
      if (raw === undefined) return refuse('required', `is missing: a ${dimension} with its unit`);
      const read = understand(raw, dimension, place);
      if (!read.ok) return refuse(read.code, read.detail, read.at === undefined ? [] : [read.at]);
      const inRange = fromValueAndUnit(read.entered.value, read.entered.unit, dimension, range);
      return inRange.ok ? read.entered : refuse(inRange.code, inRange.detail);
    })
    .meta({ ...enteredJsonSchema(dimension), description, 'x-dimension': dimension });
  fieldInfo.add(schema, { control: 'quantity', dimension });
  return schema;
}

/** The entry in SI. */
export const siOf = (entry: Quantity): number => entry.value * UNITS[entry.unit].toSi;
/** The entry in SI, where there is one. */
export const siIf = (entry: Quantity | undefined): number | undefined =>
  entry === undefined ? undefined : siOf(entry);
/** The entry in inches, for lengths. */
export const inches = (entry: Quantity): number => siOf(entry) / UNITS.in.toSi;
