import { formatQuantity } from './format.ts';
import { answerUnit, type Dimension, fromSi, toSi, type Unit, type UnitSystem } from './units.ts';

/** What a field can be, in SI: wide enough for every engine, narrow enough to tell millimetres from inches. */
export interface FieldRange {
  readonly least: number;
  readonly most: number;
  /** None is also an answer, below `least`: no lash, no shims. */
  readonly orZero?: boolean;
}

/** From `least` to `most` of a unit. */
export const between = (least: number, most: number, unit: Unit): FieldRange => ({
  least: toSi({ value: least, unit }),
  most: toSi({ value: most, unit }),
});

/** The same, or none at all. */
export const orNone = (range: FieldRange): FieldRange => ({ ...range, orZero: true });

/** A hair of slack, so that the end of a range is within it in either unit. */
const HAIR = 1e-9;

export function canBe(si: number, { least, most, orZero }: FieldRange): boolean {
  if (si === 0 && orZero === true) return true;
  const slack = HAIR * Math.max(Math.abs(least), Math.abs(most));
  return si >= least - slack && si <= most + slack;
}

const SHOWN_DIGITS = 3;

function shown(si: number, unit: Unit): string {
  return formatQuantity({ value: Number(fromSi(si, unit).value.toPrecision(SHOWN_DIGITS)), unit });
}

function inSystem({ least, most, orZero }: FieldRange, unit: Unit): string {
  return `${orZero === true ? 'none, or ' : ''}from ${shown(least, unit)} to ${shown(most, unit)}`;
}

/** `from .150 in to 1.000 in`; where the units of the call are not known, in both. */
export function rangeSaid(range: FieldRange, dimension: Dimension, system?: UnitSystem): string {
  const [inch, metric] = [answerUnit(dimension, 'inch'), answerUnit(dimension, 'metric')];
  if (system !== undefined || inch === metric)
    return inSystem(range, answerUnit(dimension, system ?? 'inch'));
  const ends = `${shown(range.least, metric)} to ${shown(range.most, metric)}`;
  return `${inSystem(range, inch)} (${ends})`;
}
