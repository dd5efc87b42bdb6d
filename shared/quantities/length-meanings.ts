import { meaning, meaningsIn, tidy } from './echo.ts';
import type { Meaning } from './number-types.ts';
import type { NumberValue } from './number-value.ts';
import { asRun } from './spoken-run.ts';
import type { Unit } from './units.ts';

/** Length with its unit said. Only digits said in a row are in doubt: nobody says how the point stands. */
export function lengthInUnit(number: NumberValue, unit: Unit): Meaning[] {
  const run = asRun(number);
  if (run === undefined || unit === 'um') return meaningsIn(number, unit);
  if (unit === 'thou') return run.tenThousandths ? [run.tenThousandths, run.thou] : [run.thou];
  if (unit === 'mm') return [meaning(run.split, 'mm'), meaning(run.whole, 'mm')];
  const small = [run.afterPoint, run.thou];
  return run.leadingZero ? small : [...small, meaning(run.whole, 'in')];
}

/** `mil`: a millimetre to one, a thousandth of an inch to the other. */
export function lengthInMil(number: NumberValue): Meaning[] {
  return [...meaningsIn(number, 'mm'), ...meaningsIn(number, 'thou')];
}

interface Parts {
  readonly of?: 'in' | 'mm';
  readonly note?: string;
}

/** Parts of an inch, or of a millimetre, that the table has no unit for: `divisor` of them make one. */
export function lengthInParts(
  number: NumberValue,
  divisor: number,
  { of = 'in', note }: Parts = {},
): Meaning[] {
  return number.readings.map((reading) =>
    meaning(tidy((number.sign * reading.value) / divisor), of, note === undefined ? {} : { note }),
  );
}

/** `tenth`: a ten-thousandth in the shop, a tenth of an inch elsewhere. */
export function lengthInTenths(number: NumberValue): Meaning[] {
  return [
    ...lengthInParts(number, 10_000, { note: 'a tenth being a tenth of a thousandth' }),
    ...lengthInParts(number, 10, { note: 'a tenth being a tenth of an inch' }),
  ];
}

/** `1/2` and `1/4` are said of thousandths too; eighths and finer only of inches. */
function isInchFraction(number: NumberValue): boolean {
  return number.denominator !== undefined && number.denominator !== 2 && number.denominator !== 4;
}

/** A bare number where inches are assumed; the docstring of `readNumber` states these rules. */
function assumedInches(number: NumberValue): Meaning[] {
  const run = asRun(number);
  if (run !== undefined) return [run.thou, run.afterPoint];
  return number.readings.flatMap((reading) => {
    const alone = { ...number, readings: [reading] };
    const [inches, thou] = [meaningsIn(alone, 'in'), meaningsIn(alone, 'thou')];
    const { value, places } = reading;
    if (number.shape === 'fraction' || (isInchFraction(number) && value < 100)) return inches;
    if (number.shape === 'said' && value > 0 && value < 10) return [...inches, ...thou];
    if (value < 10) return inches;
    const said = number.shape === 'said' || number.shape === 'said-point';
    if (said && value >= 100) return thou;
    return places >= 3 ? [...inches, ...thou] : [...thou, ...inches];
  });
}

/** A length without a unit: its meanings, none when nothing can be said without one. */
export function lengthWithoutUnit(number: NumberValue, assume: Unit | undefined): Meaning[] {
  if (assume === 'in') return assumedInches(number);
  if (assume !== undefined) return lengthInUnit(number, assume);
  const run = asRun(number);
  const said = number.shape === 'said' || number.shape === 'said-point';
  const hundreds = said && number.readings.every((reading) => reading.value >= 100);
  if (run !== undefined) return [run.thou, meaning(run.split, 'mm')];
  return hundreds ? [...meaningsIn(number, 'thou'), ...meaningsIn(number, 'mm')] : [];
}
