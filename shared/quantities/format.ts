import { spokenUnits, toldIn } from './spoken-units.ts';
import { type Quantity, UNITS, type Unit } from './units.ts';

interface QuantityFormat {
  /** Decimal places; without it the value is shown as it is, with the least places its unit is written with. */
  readonly places?: number;
  /** Half-width of the interval, in the unit of the quantity: no digit is shown finer than it. */
  readonly uncertainty?: number;
  /** A computed value: rounded to the places the trade gives it (four for inches). */
  readonly derived?: boolean;
}

const MINUS = '\u2212';

function finite(value: number): number {
  if (!Number.isFinite(value)) throw new RangeError(`${value} can't be written as a measured number`);
  return value;
}

/** Rounds half away from zero on the decimal digits, as a person does; `places` may be negative. */
function roundTo(value: number, places: number): number {
  const [mantissa = '0', exponent = '0'] = String(Math.abs(value)).split('e');
  const whole = Math.round(Number(`${mantissa}e${Number(exponent) + places}`));
  const rounded = Number(`${whole}e${-places}`);
  return value < 0 && rounded !== 0 ? -rounded : rounded;
}

/** The decimal places that show the number in full; undefined where it takes powers of ten. */
export function placesOf(value: number): number | undefined {
  const [mantissa = '', exponent = '0'] = String(Math.abs(value)).split('e');
  const places = (mantissa.split('.')[1] ?? '').length - Number(exponent);
  return Math.abs(value) >= 1e15 || places > 12 ? undefined : Math.max(0, places);
}

function write(value: number, places: number, zero: 'leading-zero' | 'none'): string {
  const rounded = roundTo(finite(value), places);
  const digits = Math.abs(rounded).toFixed(Math.min(100, Math.max(0, places)));
  const shown = zero === 'none' && digits.startsWith('0.') ? digits.slice(1) : digits;
  return rounded < 0 ? MINUS + shown : shown;
}

/** The full number, with at least `least` decimal places. */
export function writeExact(value: number, least: number, unit: Unit | undefined): string {
  const places = placesOf(finite(value));
  if (places === undefined)
    return String(value).replace('-', MINUS).replace('e-', `e${MINUS}`).replace('e+', 'e');
  return write(value, Math.max(places, least), zeroOf(unit));
}

function zeroOf(unit: Unit | undefined): 'leading-zero' | 'none' {
  return unit === undefined || unit === 'in' ? 'none' : 'leading-zero';
}

/** Decimal places that the half-width allows: two significant digits of it, one where the second is zero. */
function placesWithin(halfWidth: number): number {
  const [mantissa = '', exponent = '0'] = Math.abs(halfWidth).toExponential(1).split('e');
  return (mantissa.endsWith('.0') ? 0 : 1) - Number(exponent);
}

/** `.482`, `1.747`: a number with fixed places, no zero before the point, a real minus. */
export function formatNumber(value: number, places: number): string {
  return write(value, places, 'none');
}

/** `1.747`; where millimetres are spoken, a figure without its zero would be read as inches. */
export function formatRatio(value: number, places = 3): string {
  return write(value, places, spokenUnits() === 'metric' ? 'leading-zero' : 'none');
}

/** Whole places by which a figure grows when it is told in another unit: an inch has one more before its point in mm. */
const placesGained = (factor: number): number => Math.floor(Math.log10(factor));

/**
 * The same in the unit that is spoken, with as many places as the source bears: three of an inch are two of a
 * millimetre.
 */
function inToldUnit(quantity: Quantity, options: QuantityFormat): [Quantity, QuantityFormat] {
  const unit = toldIn(quantity.unit);
  if (unit === quantity.unit) return [quantity, options];
  const factor = UNITS[quantity.unit].toSi / UNITS[unit].toSi;
  const value = quantity.value * factor;
  const { places, uncertainty, derived } = options;
  if (uncertainty !== undefined && uncertainty !== 0 && places === undefined)
    return [{ value, unit }, { uncertainty: uncertainty * factor }];
  if (places === undefined && derived === true) return [{ value, unit }, { derived }];
  const exact = withoutNoise(quantity.value);
  const own = places ?? Math.max(placesOf(exact) ?? 0, UNITS[quantity.unit].least ?? 0);
  return [{ value, unit }, { places: Math.min(own - placesGained(factor), UNITS[unit].derived + 1) }];
}

/** `.482`, `12.24`, `−3`: a quantity without its unit, where a column or a heading has the unit. */
export function formatFigure(quantity: Quantity, options: QuantityFormat = {}): string {
  return figure(...inToldUnit(quantity, options));
}

/** Smaller than any figure of the trade in any of its units: what is left of a difference of two equal ones. */
const NOTHING = 1e-12;

/** Twelve digits hide the last bit of an arithmetic that the person never sees; a difference of nothing is none. */
const withoutNoise = (value: number): number =>
  Math.abs(finite(value)) < NOTHING ? 0 : Number(value.toPrecision(12));

function figure({ value, unit }: Quantity, options: QuantityFormat): string {
  const { uncertainty } = options;
  if (options.places !== undefined) return write(value, options.places, zeroOf(unit));
  if (uncertainty !== undefined && uncertainty !== 0)
    return write(value, placesWithin(finite(uncertainty)), zeroOf(unit));
  if (options.derived) return write(value, UNITS[unit].derived, zeroOf(unit));
  return writeExact(withoutNoise(value), UNITS[unit].least ?? 0, unit);
}

/** `.482 in`, `12.24 mm`, `−3 deg`. */
export function formatQuantity(quantity: Quantity, options: QuantityFormat = {}): string {
  const [told, as] = inToldUnit(quantity, options);
  return `${figure(told, as)} ${told.unit}`;
}

/** A value and the half-width of its interval, each as it is written. */
export interface IntervalFigures {
  readonly value: string;
  readonly spread: string;
}

/** `1.747` and `.006`: digits no finer than the uncertainty, two significant digits of it at most. */
export function intervalFigures(value: number, halfWidth: number, unit?: Unit): IntervalFigures {
  const told = unit === undefined ? undefined : toldIn(unit);
  if (unit === undefined || told === undefined || told === unit) return figuresOf(value, halfWidth, unit);
  const factor = UNITS[unit].toSi / UNITS[told].toSi;
  return figuresOf(value * factor, halfWidth * factor, told);
}

function figuresOf(value: number, halfWidth: number, unit?: Unit): IntervalFigures {
  const width = Math.abs(finite(halfWidth));
  if (width === 0) return { value: writeExact(withoutNoise(value), 0, unit), spread: '0' };
  const places = placesWithin(width);
  const zero = zeroOf(unit);
  return { value: write(value, places, zero), spread: write(width, places, zero) };
}

/**
 * `1.537` and `.010`: a ratio with three places, as the trade writes it, where they can carry its uncertainty; two
 * readings of one arm then stand under each other with the same digits.
 */
export function ratioFigures(ratio: number, halfWidth: number): IntervalFigures {
  const width = Math.abs(finite(halfWidth));
  if (width < 0.001 || width >= 0.0995) return intervalFigures(ratio, width);
  return { value: formatRatio(ratio), spread: formatNumber(width, 3) };
}

const inOne = ({ value, spread }: IntervalFigures): string => `${value} ± ${spread}`;

/** `1.747 ± .006` */
export function formatInterval(value: number, halfWidth: number, unit?: Unit): string {
  const text = inOne(intervalFigures(value, halfWidth, unit));
  return unit === undefined ? text : `${text} ${toldIn(unit)}`;
}

/** `1.537 ± .010` */
export function formatRatioInterval(ratio: number, halfWidth: number): string {
  return inOne(ratioFigures(ratio, halfWidth));
}
