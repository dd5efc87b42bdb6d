/**
 * Every unit Benchcall knows, with its dimension and its exact factor to SI.
 *
 * Sources of the factors: international inch 25.4 mm and pound 0.453 592 37 kg (exact by the 1959
 * agreement, NIST SP 811 appendix B.8), standard gravity 9.806 65 m/s² (exact, same place).
 */
const INCH = 0.0254;
const POUND = 0.45359237;
const POUND_FORCE = POUND * 9.80665;

export const UNITS = {
  in: { dimension: 'length', toSi: INCH },
  thou: { dimension: 'length', toSi: INCH / 1000 },
  mm: { dimension: 'length', toSi: 1e-3 },
  um: { dimension: 'length', toSi: 1e-6 },
  lbf: { dimension: 'load', toSi: POUND_FORCE },
  N: { dimension: 'load', toSi: 1 },
  'lbf/in': { dimension: 'rate', toSi: POUND_FORCE / INCH },
  'N/mm': { dimension: 'rate', toSi: 1e3 },
  deg: { dimension: 'angle', toSi: Math.PI / 180 },
  rpm: { dimension: 'speed', toSi: Math.PI / 30 },
  Hz: { dimension: 'frequency', toSi: 1 },
  lb: { dimension: 'mass', toSi: POUND },
  oz: { dimension: 'mass', toSi: POUND / 16 },
  kg: { dimension: 'mass', toSi: 1 },
  g: { dimension: 'mass', toSi: 1e-3 },
  psi: { dimension: 'pressure', toSi: POUND_FORCE / (INCH * INCH) },
  GPa: { dimension: 'pressure', toSi: 1e9 },
  'lb/in3': { dimension: 'density', toSi: POUND / (INCH * INCH * INCH) },
  'kg/m3': { dimension: 'density', toSi: 1 },
  degF: { dimension: 'temperature-rise', toSi: 5 / 9 },
  degC: { dimension: 'temperature-rise', toSi: 1 },
  K: { dimension: 'temperature-rise', toSi: 1 },
  'in/lbf': { dimension: 'compliance', toSi: INCH / POUND_FORCE },
  'mm/N': { dimension: 'compliance', toSi: 1e-3 },
  '1/K': { dimension: 'expansion', toSi: 1 },
} as const;

export type Unit = keyof typeof UNITS;
export type Dimension = (typeof UNITS)[Unit]['dimension'];
export type UnitSystem = 'inch' | 'metric';

/** A number with its unit, as it goes in and out of the service. */
export interface Quantity {
  readonly value: number;
  readonly unit: Unit;
}

/** The unit an answer is given in, per dimension, for `?units=inch` and `?units=metric`. */
export const ANSWER_UNITS: Record<UnitSystem, Record<Dimension, Unit>> = {
  inch: {
    length: 'in',
    load: 'lbf',
    rate: 'lbf/in',
    angle: 'deg',
    speed: 'rpm',
    frequency: 'Hz',
    mass: 'lb',
    pressure: 'psi',
    density: 'lb/in3',
    'temperature-rise': 'degF',
    compliance: 'in/lbf',
    expansion: '1/K',
  },
  metric: {
    length: 'mm',
    load: 'N',
    rate: 'N/mm',
    angle: 'deg',
    speed: 'rpm',
    frequency: 'Hz',
    mass: 'kg',
    pressure: 'GPa',
    density: 'kg/m3',
    'temperature-rise': 'K',
    compliance: 'mm/N',
    expansion: '1/K',
  },
};

export function isUnit(text: string): text is Unit {
  return Object.hasOwn(UNITS, text);
}

export function dimensionOf(unit: Unit): Dimension {
  return UNITS[unit].dimension;
}

/** The value in SI base units (metres, newtons, radians, rad/s, hertz, kilograms, pascals, kelvins). */
export function toSi(quantity: Quantity): number {
  return quantity.value * UNITS[quantity.unit].toSi;
}

/** The SI value expressed in `unit`. */
export function fromSi(si: number, unit: Unit): Quantity {
  return { value: si / UNITS[unit].toSi, unit };
}

/** All units of one dimension, in the order of the table. */
export function unitsOf(dimension: Dimension): Unit[] {
  return (Object.keys(UNITS) as Unit[]).filter((unit) => UNITS[unit].dimension === dimension);
}
