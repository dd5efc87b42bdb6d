/*
 * Everything that is known of a dimension and of its units: one entry adds one, for reading, writing, schemas,
 * answers and forms alike.
 *
 * Sources of the factors: international inch 25.4 mm and pound 0.453 592 37 kg (exact by the 1959 agreement, NIST
 * SP 811 appendix B.8), standard gravity 9.806 65 m/s² (exact, same place).
 */
const INCH = 0.0254;
const POUND = 0.45359237;
const POUND_FORCE = POUND * 9.80665;
const DEGREE = Math.PI / 180;
const TURN_A_MINUTE = Math.PI / 30;

export interface UnitEntry {
  /** Times this it is in SI. */
  readonly toSi: number;
  /** Decimal places that the trade gives a computed value. */
  readonly derived: number;
  /** Places that a bench works with in a long answer; six digits where it has none of its own. */
  readonly shown?: number;
  /** Places that a value is written with at least. */
  readonly least?: number;
  /** `inches`, where it is asked which unit was meant. */
  readonly spoken?: string;
  /** How it is written beside its own name: small letters, parts with a space between. */
  readonly written: readonly string[];
}

export interface DimensionEntry {
  /** The unit of an answer in each system. */
  readonly inch: string;
  readonly metric: string;
  /** Beyond this no machine part goes; SI. */
  readonly most: number;
  /** How such a quantity can be written, where a number with the first unit does not show it all. */
  readonly example?: string;
  readonly units: Readonly<Record<string, UnitEntry>>;
}

export const DIMENSIONS = {
  length: {
    inch: 'in',
    metric: 'mm',
    most: 100 * INCH,
    example: '.482 in, 482 thou, 12.24 mm or 7/16 in',
    units: {
      in: { toSi: INCH, derived: 4, shown: 4, least: 3, spoken: 'inches', written: ['in'] },
      thou: { toSi: INCH / 1000, derived: 1, spoken: 'thousandths of an inch', written: ['thou', 'thou in'] },
      mm: { toSi: 1e-3, derived: 3, shown: 3, least: 2, spoken: 'millimetres', written: ['mm'] },
      um: { toSi: 1e-6, derived: 0, spoken: 'thousandths of a millimetre', written: ['um'] },
    },
  },
  load: {
    inch: 'lbf',
    metric: 'N',
    most: 1e6 * POUND_FORCE,
    units: {
      lbf: { toSi: POUND_FORCE, derived: 0, shown: 1, written: ['lbf', 'lb force'] },
      N: { toSi: 1, derived: 0, shown: 1, written: ['n'] },
    },
  },
  rate: {
    inch: 'lbf/in',
    metric: 'N/mm',
    most: (1e6 * POUND_FORCE) / INCH,
    units: {
      'lbf/in': { toSi: POUND_FORCE / INCH, derived: 0, shown: 1, written: ['lbf / in', 'lb / in'] },
      'N/mm': { toSi: 1e3, derived: 1, shown: 2, written: ['n / mm'] },
    },
  },
  angle: {
    inch: 'deg',
    metric: 'deg',
    most: 1440 * DEGREE,
    units: { deg: { toSi: DEGREE, derived: 1, shown: 2, written: ['deg'] } },
  },
  speed: {
    inch: 'rpm',
    metric: 'rpm',
    most: 1e6 * TURN_A_MINUTE,
    units: { rpm: { toSi: TURN_A_MINUTE, derived: 0, written: ['rpm', 'rev / min', 'r / min'] } },
  },
  frequency: {
    inch: 'Hz',
    metric: 'Hz',
    most: 1e9,
    units: { Hz: { toSi: 1, derived: 0, shown: 1, written: ['hz'] } },
  },
  mass: {
    inch: 'lb',
    metric: 'kg',
    most: 1e4,
    units: {
      lb: { toSi: POUND, derived: 3, written: ['lb'] },
      oz: { toSi: POUND / 16, derived: 2, written: ['oz'] },
      kg: { toSi: 1, derived: 3, written: ['kg'] },
      g: { toSi: 1e-3, derived: 1, written: ['g'] },
    },
  },
  pressure: {
    inch: 'psi',
    metric: 'GPa',
    most: 1e13,
    units: {
      psi: {
        toSi: POUND_FORCE / (INCH * INCH),
        derived: 0,
        shown: 0,
        written: ['psi', 'lb / square in'],
      },
      GPa: { toSi: 1e9, derived: 1, shown: 2, written: ['gpa'] },
    },
  },
  density: {
    inch: 'lb/in3',
    metric: 'kg/m3',
    most: 1e5,
    units: {
      'lb/in3': {
        toSi: POUND / (INCH * INCH * INCH),
        derived: 3,
        written: ['lb / in 3', 'lb / cu in', 'lb / cubic in'],
      },
      'kg/m3': { toSi: 1, derived: 0, written: ['kg / m 3', 'kg / cubic metre', 'kg / cubic meter'] },
    },
  },
  'temperature-rise': {
    inch: 'degF',
    metric: 'K',
    most: 5e3,
    units: {
      degF: { toSi: 5 / 9, derived: 0, written: ['degf', 'deg f', 'f'] },
      degC: { toSi: 1, derived: 0, written: ['degc', 'deg c', 'c'] },
      K: { toSi: 1, derived: 0, written: ['k'] },
    },
  },
  compliance: {
    inch: 'in/lbf',
    metric: 'mm/N',
    most: 1,
    units: {
      'in/lbf': { toSi: INCH / POUND_FORCE, derived: 8, written: ['in / lbf', 'in / lb'] },
      'mm/N': { toSi: 1e-3, derived: 8, written: ['mm / n'] },
    },
  },
  expansion: {
    inch: '1/K',
    metric: '1/K',
    most: 1e-2,
    example: '11.7e-6 1/K',
    units: {
      '1/K': {
        toSi: 1,
        derived: 8,
        written: ['1 / k', '/ k', '/ degc', '/ deg c', '1 / degc', '1 / deg c'],
      },
    },
  },
} as const satisfies Readonly<Record<string, DimensionEntry>>;

type Table = typeof DIMENSIONS;
export type Dimension = keyof Table;
/** Every unit of every dimension. */
export type Unit = { readonly [D in Dimension]: keyof Table[D]['units'] }[Dimension];
