import { formatNumber, placesOf, writeExact } from './format.ts';
import type { Meaning } from './number-types.ts';
import type { NumberValue } from './number-value.ts';
import { UNITS, type Unit } from './units.ts';

/** The value without its rounding dust where a decimal point was moved: 435.5 thou → .4355 in. */
export function tidy(value: number): number {
  return Number(value.toPrecision(15));
}

/** Inches as the trade writes a worked-out length: three places at the least. */
function inInches(inches: number): string {
  return `${writeExact(tidy(inches), 3, 'in')} in`;
}

/** Sixty-fourths are exact in six places; thirds have no end, so more places say no more. */
function partInInches(inches: number): string {
  const places = placesOf(inches) ?? 12;
  return places > 6 ? `${formatNumber(inches, 6)} in` : inInches(inches);
}

/** `.482 in`, `482 thou = .482 in`. */
export function showValue(value: number, places: number, unit: Unit | undefined): string {
  const shown = writeExact(value, places, unit);
  if (unit === undefined) return shown;
  return unit === 'thou' ? `${shown} thou = ${inInches(value / 1000)}` : `${shown} ${unit}`;
}

/** `7/16 in = .4375 in`, `1/2 thou = .0005 in`. */
function showFraction(value: number, fraction: string, unit: Unit | undefined): string {
  const given = `${value < 0 ? '\u2212' : ''}${fraction}`;
  if (unit === 'thou') return `${given} thou = ${inInches(value / 1000)}`;
  if (unit === 'in') return `${given} in = ${partInInches(value)}`;
  return unit === undefined
    ? `${given} = ${writeExact(value, 0, unit)}`
    : `${given} ${unit} = ${writeExact(value, 0, unit)} ${unit}`;
}

interface Shown {
  readonly places?: number;
  readonly note?: string;
  readonly fraction?: string;
}

/** One meaning with the question that would settle on it. */
export function meaning(value: number, unit: Unit | undefined, shown: Shown = {}): Meaning {
  const clean = value === 0 ? 0 : value;
  const readAs =
    shown.fraction === undefined
      ? showValue(clean, shown.places ?? 0, unit)
      : showFraction(clean, shown.fraction, unit);
  const spoken = unit === undefined ? undefined : UNITS[unit].spoken;
  const start = spoken === undefined ? `Is it ${readAs}` : `Is it in ${spoken}: ${readAs}`;
  const question = shown.note === undefined ? `${start}?` : `${start}, ${shown.note}?`;
  return unit === undefined ? { value: clean, readAs, question } : { value: clean, unit, readAs, question };
}

/** All readings of a number in one unit; a fraction is echoed as it was given. */
export function meaningsIn(number: NumberValue, unit: Unit | undefined): Meaning[] {
  const fraction = number.shape === 'run' ? undefined : number.fraction;
  return number.readings.map((reading) =>
    meaning(number.sign * reading.value, unit, fraction === undefined ? reading : { ...reading, fraction }),
  );
}
