import { z } from 'zod';
import { defined } from '../defined.ts';
import { memberOf } from '../member.ts';
import type { FaultCode } from '../problems/faults.ts';
import type { FieldRange } from '../quantities/field-range.ts';
import { formatQuantity } from '../quantities/format.ts';
import { readBetween, sayBounds, saysBetween } from '../quantities/read-between.ts';
import { outsideOf } from '../quantities/read-in-field.ts';
import { saysTurns } from '../quantities/turns-reading.ts';
import { UNITS, type Unit } from '../quantities/units.ts';
import { entered, type PlaceOfEntry } from './entered.ts';
import { fieldInfo } from './field-info.ts';
import { quantityJsonSchema } from './quantity-fields.ts';
import { type SaidInTurns, textOf, turnsIn } from './said-in-turns.ts';

/**
 * A length as somebody found it: one figure, or the bounds that two gauges set. A bound that no gauge has
 * found is left out; there is never a mean of the two.
 */
export interface Gauged {
  readonly typed: string;
  readonly readAs: string;
  readonly unit: Unit;
  readonly value?: number;
  readonly low?: number;
  readonly high?: number;
}

/** The two ways in which a length of one field can have been found. */
interface Readers {
  readonly canBe: FieldRange;
  /** The same, unless what it can be is asked later. */
  readonly asked?: FieldRange;
  readonly ofNut?: boolean;
  readonly figure: ReturnType<typeof entered>;
  readonly bounds: ReturnType<typeof boundsOf>;
}

function boundsOf(canBe: FieldRange) {
  const bound = entered('length', 'a gauge', canBe, { sign: 'not-negative' });
  return z
    .strictObject({ moreThan: bound.optional(), lessThan: bound.optional() })
    .refine((ends) => ends.moreThan !== undefined || ends.lessThan !== undefined, {
      error: 'needs moreThan, lessThan or both',
      params: { fault: 'required' satisfies FaultCode },
    });
}

const readersOf = (canBe: FieldRange, place: PlaceOfEntry = {}): Readers => ({
  canBe,
  ...(place.asksLater === true ? {} : { asked: canBe }),
  ...(place.ofNut === true ? { ofNut: true } : {}),
  figure: entered('length', 'one figure', canBe, { sign: 'any' }, place),
  bounds: boundsOf(canBe),
});

/** What of a length as it was found, its figure or a bound, the field cannot be. */
function gaugedOutside(
  { value: figure, low, high, unit }: Omit<Gauged, 'typed' | 'readAs'>,
  canBe: FieldRange,
): string | undefined {
  return [figure, low, high]
    .filter((end) => end !== undefined)
    .map((value) => outsideOf({ value, unit, readAs: formatQuantity({ value, unit }) }, canBe))
    .find((outside) => outside !== undefined);
}

const hasBounds = (raw: unknown): boolean =>
  typeof raw === 'object' && raw !== null && ('moreThan' in raw || 'lessThan' in raw);

interface Refusal {
  addIssue(issue: {
    code: 'custom';
    message: string;
    path?: PropertyKey[];
    params: { fault: FaultCode; ambiguities?: unknown };
  }): void;
}

function passOn(ctx: Refusal, issues: readonly z.core.$ZodIssue[]): never {
  for (const issue of issues) {
    const params = memberOf(issue, 'params');
    const code = memberOf(params, 'fault');
    const known = [
      'required',
      'wrong-dimension',
      'unknown-unit',
      'not-a-number',
      'out-of-range',
      'impossible-input',
      'unknown-field',
    ] as const;
    const fault: FaultCode =
      known.find((each) => each === code) ??
      (issue.code === 'unrecognized_keys' ? 'unknown-field' : 'not-allowed');
    const ambiguities = memberOf(params, 'ambiguities');
    ctx.addIssue({
      code: 'custom',
      message: issue.message,
      path: [...issue.path],
      params: { fault, ...defined({ ambiguities }) },
    });
  }
  return z.NEVER;
}

function fromBounds(raw: unknown, ctx: Refusal, { bounds }: Readers): Gauged {
  const read = bounds.safeParse(raw);
  if (!read.success) return passOn(ctx, read.error.issues);
  const { moreThan, lessThan } = read.data;
  const unit = moreThan?.unit ?? lessThan?.unit ?? 'in';
  const inUnit = (end: { value: number; unit: Unit } | undefined) =>
    end === undefined
      ? undefined
      : end.unit === unit
        ? end.value
        : (end.value * UNITS[end.unit].toSi) / UNITS[unit].toSi;
  const low = inUnit(moreThan);
  const high = inUnit(lessThan);
  if (low !== undefined && high !== undefined && low >= high) {
    ctx.addIssue({
      code: 'custom',
      message: 'has its ends the wrong way round: the gauge that goes is the smaller',
      params: { fault: 'not-allowed' },
    });
    return z.NEVER;
  }
  const ends = { ...defined({ low, high }), unit };
  const readAs = sayBounds(ends);
  return { typed: readAs, readAs, ...ends };
}

/** Turns of an adjuster are no length by themselves: they want its thread and the ratio. */
const NUT_TURNS =
  'counts turns of the adjuster, and those are no length by themselves: work them out with the adjusters, or give a length';

function readGauged(raw: unknown, ctx: Refusal, readers: Readers): Gauged {
  if (readers.ofNut === true && saysTurns(textOf(raw)?.text ?? '')) {
    ctx.addIssue({ code: 'custom', message: NUT_TURNS, params: { fault: 'not-allowed' } });
    return z.NEVER;
  }
  if (hasBounds(raw)) return fromBounds(raw, ctx, readers);
  const given = textOf(raw);
  if (given !== undefined && saysBetween(given.text)) {
    const read = readBetween(given.text, given.assume, readers.asked);
    const outside = read.ok ? gaugedOutside(read.between, readers.canBe) : read.detail;
    if (read.ok && outside === undefined)
      return { typed: given.text, readAs: sayBounds(read.between), ...read.between };
    const fault = read.ok ? 'out-of-range' : 'not-allowed';
    ctx.addIssue({ code: 'custom', message: outside ?? '', params: { fault } });
    return z.NEVER;
  }
  const read = readers.figure.safeParse(raw);
  return read.success ? read.data : passOn(ctx, read.error.issues);
}

const infoOf = (description: string) => ({
  anyOf: [
    ...quantityJsonSchema('length').anyOf,
    {
      type: 'object' as const,
      properties: { moreThan: quantityJsonSchema('length'), lessThan: quantityJsonSchema('length') },
      additionalProperties: false,
    },
  ],
  description,
  'x-dimension': 'length',
});

/** A length that may lie between two gauges, kept as it was found. */
export function gauged(description: string, canBe: FieldRange, place: PlaceOfEntry = {}) {
  const readers = readersOf(canBe, place);
  const schema = z
    .unknown()
    .transform((raw, ctx) => readGauged(raw, ctx, readers))
    .meta(infoOf(description));
  fieldInfo.add(schema, { control: 'quantity', dimension: 'length', canBe });
  return schema;
}

/** The same, and a count of turns where the dial is known elsewhere: `4 turns 37`. */
export function gaugedOrTurns(description: string, canBe: FieldRange, place: PlaceOfEntry = {}) {
  const readers = readersOf(canBe, place);
  const schema = z
    .unknown()
    .transform(
      (raw, ctx): Gauged | SaidInTurns =>
        (place.ofNut === true ? undefined : turnsIn(raw)) ?? readGauged(raw, ctx, readers),
    )
    .meta(infoOf(description));
  fieldInfo.add(schema, { control: 'quantity', dimension: 'length', canBe });
  return schema;
}
