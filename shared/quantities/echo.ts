import { writeExact } from './format.ts';
import type { Meaning } from './number-types.ts';
import type { NumberValue } from './number-value.ts';
import type { Unit } from './units.ts';
import type { WrittenReading } from './written-number.ts';

/** The value without its rounding dust where a decimal point was moved: 435.5 thou → .4355 in. */
export function tidy(value: number): number {
  return Number(value.toPrecision(15));
}

export function thouInInches(thou: number): string {
  return `${writeExact(thou / 1000, 3, 'in')} in`;
}

/** `.482 in`, `482 thou = .482 in`. */
export function showValue(value: number, places: number, unit: Unit | undefined): string {
  const shown = writeExact(value, places, unit);
  if (unit === undefined) return shown;
  return unit === 'thou' ? `${shown} thou = ${thouInInches(value)}` : `${shown} ${unit}`;
}

const SPOKEN_UNITS: Partial<Record<Unit, string>> = {
  in: 'inches',
  thou: 'thousandths of an inch',
  mm: 'millimetres',
  um: 'thousandths of a millimetre',
};

/** One meaning with the question that would settle on it. */
export function meaning(value: number, unit: Unit | undefined, reading?: Partial<WrittenReading>): Meaning {
  const clean = value === 0 ? 0 : value;
  const readAs = showValue(clean, reading?.places ?? 0, unit);
  const spoken = unit === undefined ? undefined : SPOKEN_UNITS[unit];
  const start = spoken === undefined ? `Is it ${readAs}` : `Is it in ${spoken}: ${readAs}`;
  const question = reading?.note === undefined ? `${start}?` : `${start}, ${reading.note}?`;
  return unit === undefined ? { value: clean, readAs, question } : { value: clean, unit, readAs, question };
}

/** All readings of a number in one unit; a fraction is echoed as it was given. */
export function meaningsIn(number: NumberValue, unit: Unit | undefined): Meaning[] {
  return number.readings.map((reading) => {
    const found = meaning(number.sign * reading.value, unit, reading);
    if (number.fraction === undefined || number.shape === 'run') return found;
    const sign = number.sign < 0 ? '\u2212' : '';
    const given = unit === undefined ? `${sign}${number.fraction}` : `${sign}${number.fraction} ${unit}`;
    // Thousandths end in their inches already.
    const same = unit === 'thou' ? thouInInches(found.value) : found.readAs;
    return { ...found, readAs: `${given} = ${same}` };
  });
}
