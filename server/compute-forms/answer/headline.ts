import { z } from 'zod';
import { formatFigure, intervalFigures } from '../../../shared/quantities/format.ts';
import { toldIn } from '../../../shared/quantities/spoken-units.ts';
import { isUnit, UNITS, type Unit } from '../../../shared/quantities/units.ts';
import type { Registered } from '../../compute/registry.ts';
import type { Scalar } from './answer-parts.ts';
import { shownValue } from './value-text.ts';

/** The answer in one line: a figure with its interval where there is one, or words. */
interface Headline {
  readonly of: Scalar;
  readonly figure: string;
  readonly spread?: string;
  readonly unit?: string;
}

const MINUS = '\u2212';
/** No answer of the bench bears more than this many significant digits, but a length its unit's places. */
const MOST_DIGITS = 4;

const amount = z.union([
  z.number().transform((value) => ({ value })),
  z.object({ value: z.number(), unit: z.string(), side: z.string().optional() }),
]);
const ends = z.tuple([amount, amount]);

const nearby = (name: string, other: string): string => name.replace(/[^.]*$/, other);

/** What the answer says of how well the figure is known: the half of an even 95 % interval, or a standard deviation. */
function knownWithin(of: Scalar, scalars: readonly Scalar[], value: number) {
  const named = (name: string) => scalars.find((each) => each.name === nearby(of.name, name))?.value;
  const interval = ends.safeParse(named('interval95'));
  if (interval.success) {
    const [low, high] = interval.data;
    const half = (high.value - low.value) / 2;
    const even = Math.abs((low.value + high.value) / 2 - value) <= 1e-9 * half;
    if (half > 0 && even) return { half };
  }
  const deviation = z.number().positive().safeParse(named('standardUncertainty'));
  return deviation.success ? { deviation: deviation.data } : {};
}

/** Few digits, and what would be rounded to zero keeps two of them. */
function withFewDigits(value: number, unit: Unit | undefined): string {
  const places = unit === 'in' || unit === 'mm' ? UNITS[unit].shown : undefined;
  // A wheel is read in parts of a degree, whatever stands before the point.
  if (unit === 'deg' && Math.abs(value) >= 100)
    return formatFigure({ value: Number(value.toFixed(2)), unit });
  const short = places === undefined ? Number(value.toPrecision(MOST_DIGITS)) : Number(value.toFixed(places));
  const kept = short === 0 && value !== 0 ? Number(value.toPrecision(2)) : short;
  if (kept !== 0 && Math.abs(kept) < 1e-12) return value.toExponential(1).replace('-', MINUS);
  if (unit !== undefined) return formatFigure({ value: kept, unit });
  return shownValue(kept);
}

function figuresOf(value: number, unit: Unit | undefined, within: ReturnType<typeof knownWithin>) {
  if (within.half !== undefined) {
    const { value: figure, spread } = intervalFigures(value, within.half, unit);
    return { figure, spread };
  }
  if (within.deviation !== undefined) return { figure: intervalFigures(value, within.deviation, unit).value };
  return { figure: withFewDigits(value, unit) };
}

/** What a computation declares its answer in one line to be, as this answer has it. */
export function headlineOf(
  each: Registered,
  body: unknown,
  scalars: readonly Scalar[],
): Headline | undefined {
  const of = each
    .headline(body)
    .flatMap((name) => scalars.find((scalar) => scalar.name === name) ?? [])
    .at(0);
  if (of === undefined) return undefined;
  const read = amount.safeParse(of.value);
  if (!read.success) return { of, figure: shownValue(of.value) };
  const { value } = read.data;
  const written = 'unit' in read.data ? read.data.unit : undefined;
  const unit = written !== undefined && isUnit(written) ? written : undefined;
  const side = 'side' in read.data ? read.data.side : undefined;
  const told = unit === undefined ? undefined : toldIn(unit);
  return {
    of,
    ...figuresOf(value, unit, knownWithin(of, scalars, value)),
    ...(told === undefined ? {} : { unit: side === undefined ? told : `${told} ${side}` }),
  };
}
