import { z } from 'zod';
import { defined } from '../defined.ts';
import type { FaultCode } from '../problems/faults.ts';
import type { FieldRange } from '../quantities/field-range.ts';
import { formatQuantity } from '../quantities/format.ts';
import type { Ambiguity, NumberReading } from '../quantities/number-types.ts';
import { inOtherUnit, outsideOf, readInField } from '../quantities/read-in-field.ts';
import { readNumber } from '../quantities/read-number.ts';
import { threadsPerInch } from '../quantities/threads-per-inch.ts';
import { type Dimension, isUnit, type Quantity, UNITS, type Unit, unitsOf } from '../quantities/units.ts';
import { whichSaid } from '../quantities/which-said.ts';
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

/** What else the place of an entry tells of it. */
export interface PlaceOfEntry {
  /** `20 tpi` is a length: a pitch. */
  readonly threads?: boolean;
  /** What lies outside the range is kept, and asked about by what it is used for. */
  readonly asksLater?: boolean;
  /** Nothing that it can be is left unasked, and what it cannot be is kept: it is asked about by what it is used for. */
  readonly keepsOutside?: boolean;
  /** Turns said there are of the nut, never of a dial. */
  readonly ofNut?: boolean;
}

interface Place extends PlaceOfEntry {
  readonly range: FieldRange;
}

type Understood =
  | { ok: true; entered: Entered }
  | {
      ok: false;
      code: FaultCode;
      detail: string;
      at?: string;
      /** The meanings that the text can have there, for the person to choose from. */
      ambiguities?: readonly Ambiguity[];
    };

const askWhich = (text: string, ambiguities: readonly Ambiguity[]): Understood => ({
  ok: false,
  code: 'not-allowed',
  detail: whichSaid(text, ambiguities),
  ambiguities,
});

function readThere(text: string, options: Parameters<typeof readNumber>[1], place: Place): NumberReading {
  const alone = place.asksLater === true ? readNumber(text, options) : undefined;
  if (alone?.ok === true) return alone;
  const within = readInField(text, { ...options, range: place.range });
  if (place.keepsOutside !== true || within.ok || within.fault === undefined) return within;
  const outside = readNumber(text, options);
  return outside.ok ? outside : within;
}

/** The quantity that a text says with its unit. */
function numberIn(text: string, dimension: Dimension): Quantity | undefined {
  const read = readNumber(text, { kind: dimension });
  return read.ok && read.unit !== undefined ? { value: read.value, unit: read.unit } : undefined;
}

/** In which other unit what lies outside would be something usual there: that is asked with the fault. */
function otherwise(came: Quantity | undefined, { range }: Place): { ambiguities?: readonly Ambiguity[] } {
  const ambiguities = came === undefined ? [] : inOtherUnit(came, range);
  return ambiguities.length === 0 ? {} : { ambiguities };
}

function understandText(
  text: string,
  dimension: Dimension,
  assume: Unit | undefined,
  turn: Turn,
  place: Place,
): Understood {
  const threads = place.threads === true ? threadsPerInch(text) : undefined;
  if (threads !== undefined)
    return {
      ok: true,
      entered: { typed: text, value: 1 / threads, unit: 'in', readAs: `${threads} threads to the inch` },
    };
  const read = readThere(text, { kind: dimension, ...defined({ assume, perTurn: turn.perTurn }) }, place);
  if (read.ok) {
    if (read.unit === undefined) return { ok: false, code: 'wrong-dimension', detail: 'needs a unit' };
    return { ok: true, entered: { typed: text, value: read.value, unit: read.unit, readAs: read.readAs } };
  }
  if (read.fault) {
    const { code, detail } = read.fault;
    return {
      ok: false,
      code,
      detail,
      ...otherwise(code === 'out-of-range' ? numberIn(text, dimension) : undefined, place),
    };
  }
  return askWhich(text, read.ambiguities);
}

/** Digits that a bench can mean; what a machine sends beyond them is kept in the value and told nowhere. */
const MOST_DIGITS = 5;

/** `11.383 deg` of 11.383113482435038, as a program sends it: with five digits, or a place more than a computed value has. */
function withoutTail(quantity: Quantity): string {
  const places = UNITS[quantity.unit].derived + 1;
  const digits = Number(quantity.value.toPrecision(MOST_DIGITS));
  const rounded = Number(quantity.value.toFixed(places));
  // A small figure keeps its digits: a graduation may be finer than those places.
  const value = Math.abs(quantity.value) < 10 ** (MOST_DIGITS - 1 - places) ? digits : rounded;
  return formatQuantity({ ...quantity, value });
}

/** What stands under a name of what was sent. */
const memberOf = (raw: object, name: string): unknown =>
  Object.entries(raw).find(([key]) => key === name)?.[1];

/** Understands `".482 in"`, `{ value, unit }`, or what a form sends: `{ typed, assume, perTurn? }`. */
function understand(raw: unknown, dimension: Dimension, place: Place): Understood {
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
  const typed = memberOf(raw, 'typed');
  const assume = memberOf(raw, 'assume');
  if (typeof typed === 'string' && typeof assume === 'string' && isUnit(assume)) {
    const perTurn = z.object({
      value: z.number(),
      unit: z.custom<Unit>((unit) => typeof unit === 'string' && isUnit(unit)),
    });
    const turn = perTurn.safeParse(memberOf(raw, 'perTurn'));
    return understandText(typed, dimension, assume, turn.success ? { perTurn: turn.data } : {}, place);
  }
  const value = memberOf(raw, 'value');
  const unit = memberOf(raw, 'unit');
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
  const readAs = withoutTail({ value, unit });
  const own = typeof typed === 'string' ? typed : formatQuantity({ value, unit });
  return { ok: true, entered: { typed: own, value, unit, readAs } };
}

/** An entry of `dimension` that is kept as it was made. */
export function entered(
  dimension: Dimension,
  description: string,
  canBe: FieldRange,
  range: QuantityRange = {},
  place: PlaceOfEntry = {},
) {
  const schema = z
    .unknown()
    .transform((raw, ctx): Entered => {
      const refuse = (
        fault: FaultCode,
        message: string,
        path: string[] = [],
        ambiguities?: readonly Ambiguity[],
      ): never => {
        ctx.addIssue({ code: 'custom', message, path, params: { fault, ...defined({ ambiguities }) } });
        return z.NEVER;
      };
      if (raw === undefined) return refuse('required', `is missing: a ${dimension} with its unit`);
      const read = understand(raw, dimension, { ...place, range: canBe });
      if (!read.ok)
        return refuse(read.code, read.detail, read.at === undefined ? [] : [read.at], read.ambiguities);
      const inRange = fromValueAndUnit(read.entered.value, read.entered.unit, dimension, range);
      if (!inRange.ok) return refuse(inRange.code, inRange.detail);
      const kept = place.asksLater === true || place.keepsOutside === true;
      const outside = kept ? undefined : outsideOf(read.entered, canBe);
      if (outside === undefined) return read.entered;
      const { ambiguities } = otherwise(read.entered, { ...place, range: canBe });
      return refuse('out-of-range', outside, [], ambiguities);
    })
    .meta({
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
      description,
      'x-dimension': dimension,
    });
  fieldInfo.add(schema, { control: 'quantity', dimension, canBe });
  return schema;
}

/** The entry in SI. */
export const siOf = (entry: Quantity): number => entry.value * UNITS[entry.unit].toSi;
/** The entry in SI, where there is one. */
export const siIf = (entry: Quantity | undefined): number | undefined =>
  entry === undefined ? undefined : siOf(entry);
/** The entry in inches, for lengths. */
export const inches = (entry: Quantity): number => siOf(entry) / UNITS.in.toSi;
