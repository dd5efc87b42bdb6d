import { meaning, meaningsIn, tidy } from './echo.ts';
import type { Meaning } from './number-types.ts';
import type { NumberValue } from './number-value.ts';
import type { Unit } from './units.ts';

/** Digits said one after another, `eight forty-two`, with what they mean in each way of saying them. */
interface Run {
  /** As one whole number: 842. */
  readonly whole: number;
  /** As thousandths of an inch: the same number. */
  readonly thou: Meaning;
  /** As the digits after the point of an inch: .842. */
  readonly afterPoint: Meaning;
  /** First group before the point: twelve twenty-four → 12.24. */
  readonly split: number;
  readonly leadingZero: boolean;
}

function asRun(number: NumberValue): Run | undefined {
  const run = number.run;
  if (run === undefined) return undefined;
  const whole = number.sign * (Number(run.digits) + run.part);
  const [head = '', ...tail] = run.groups;
  const afterHead = run.digits.length - head.length;
  return {
    whole,
    thou: meaning(whole, 'thou'),
    afterPoint: meaning(tidy(whole / 10 ** run.digits.length), 'in', { places: run.digits.length }),
    split: tail.length === 0 ? whole : tidy(whole / 10 ** afterHead),
    leadingZero: run.digits.startsWith('0'),
  };
}

/** Length with its unit said. Only digits said in a row are in doubt: nobody says how the point stands. */
export function lengthInUnit(number: NumberValue, unit: Unit): Meaning[] {
  const run = asRun(number);
  if (run === undefined || unit === 'thou' || unit === 'um') return meaningsIn(number, unit);
  if (unit === 'mm') return [meaning(run.split, 'mm'), meaning(run.whole, 'mm')];
  const small = [run.afterPoint, run.thou];
  return run.leadingZero ? small : [...small, meaning(run.whole, 'in')];
}

/** `mil`: a millimetre to one, a thousandth of an inch to the other. */
export function lengthInMil(number: NumberValue): Meaning[] {
  return [...meaningsIn(number, 'mm'), ...meaningsIn(number, 'thou')];
}

/** `tenth`: a ten-thousandth in the shop, a tenth of an inch in a school. */
export function lengthInTenths(number: NumberValue): Meaning[] {
  return number.readings.flatMap((reading) => {
    const value = number.sign * reading.value;
    return [meaning(tidy(value / 10_000), 'in'), meaning(tidy(value / 10), 'in')];
  });
}

/** `1/2` and `1/4` are said of thousandths too; eighths and finer only of inches. */
function isInchFraction(number: NumberValue): boolean {
  return number.denominator !== undefined && number.denominator !== 2 && number.denominator !== 4;
}

function runInInches(run: Run): Meaning[] {
  return [run.thou, run.afterPoint];
}

/** A bare number where inches are assumed; the docstring of `readNumber` states these rules. */
function assumedInches(number: NumberValue): Meaning[] {
  const run = asRun(number);
  if (run !== undefined) return runInInches(run);
  const inches = meaningsIn(number, 'in');
  const largest = Math.max(...number.readings.map((reading) => reading.value));
  if (number.shape === 'fraction' || (isInchFraction(number) && largest < 100)) return inches;
  const thou = meaningsIn(number, 'thou');
  const said = number.shape === 'said' || number.shape === 'said-point';
  if (said && largest >= 100) return thou;
  if (number.shape === 'said' && largest > 0 && largest < 10) return [...inches, ...thou];
  if (largest < 10) return inches;
  const fine = number.readings.every((reading) => reading.places >= 3);
  return fine ? [...inches, ...thou] : [...thou, ...inches];
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
