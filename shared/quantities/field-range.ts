import { formatQuantity } from './format.ts';
import { answerUnit, type Dimension, fromSi, toSi, type Unit, type UnitSystem } from './units.ts';

/** What a field can be, in SI: wide enough for every engine, narrow enough to tell millimetres from inches. */
export interface FieldRange {
  readonly least: number;
  readonly most: number;
  /** None is also an answer, below `least`: no lash, no shims. */
  readonly orZero?: boolean;
  /** What it mostly is, where people speak both inches and millimetres of it: a number beyond that is asked about. */
  readonly usual?: { readonly least: number; readonly most: number };
}

/** From `least` to `most` of a unit. */
export const between = (least: number, most: number, unit: Unit): FieldRange => ({
  least: toSi({ value: least, unit }),
  most: toSi({ value: most, unit }),
});

/** The same, or none at all. */
export const orNone = (range: FieldRange): FieldRange => ({ ...range, orZero: true });

/** A range with what the field mostly is. */
export const usually = (range: FieldRange, least: number, most: number, unit: Unit): FieldRange => ({
  ...range,
  usual: between(least, most, unit),
});

/** A hair of slack, so that the end of a range is within it in either unit. */
const HAIR = 1e-9;

export function canBe(si: number, { least, most, orZero }: FieldRange): boolean {
  if (si === 0 && orZero === true) return true;
  const slack = HAIR * Math.max(Math.abs(least), Math.abs(most));
  return si >= least - slack && si <= most + slack;
}

/** Nothing, and what the field mostly is; everything, where that is not known. */
export const isUsual = (si: number, { usual }: FieldRange): boolean =>
  usual === undefined || si === 0 || canBe(si, usual);

const SHOWN_DIGITS = 2;
/** Rounded inward, so that whatever is said to be allowed is. */
const INWARD = { least: Math.ceil, most: Math.floor } as const;

function shown(si: number, unit: Unit, end: keyof typeof INWARD): string {
  const { value } = fromSi(si, unit);
  const step = 10 ** (Math.floor(Math.log10(Math.abs(value) || 1)) + 1 - SHOWN_DIGITS);
  const steps = Number((value / step).toPrecision(9));
  return formatQuantity({ value: Number((INWARD[end](steps) * step).toPrecision(9)), unit });
}

function inSystem({ least, most, orZero }: FieldRange, unit: Unit): string {
  return `${orZero === true ? 'none, or ' : ''}from ${shown(least, unit, 'least')} to ${shown(most, unit, 'most')}`;
}

/** `from .150 in to 1.000 in`; where the units of the call are not known, in both. */
export function rangeSaid(range: FieldRange, dimension: Dimension, system?: UnitSystem): string {
  const [inch, metric] = [answerUnit(dimension, 'inch'), answerUnit(dimension, 'metric')];
  if (system !== undefined || inch === metric)
    return inSystem(range, answerUnit(dimension, system ?? 'inch'));
  const ends = `${shown(range.least, metric, 'least')} to ${shown(range.most, metric, 'most')}`;
  return `${inSystem(range, inch)} (${ends})`;
}
