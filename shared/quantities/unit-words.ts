import { isUnit, type Unit } from './units.ts';

/** What a unit text can mean beside a unit of the table. */
export type NamedUnit = Unit | 'mil' | 'tenth' | 'tenth-inch' | 'ten-thousandth' | 'turn';

/** Words of units in one spelling each. */
const WORDS: Record<string, string> = {
  '"': 'in',
  ins: 'in',
  inch: 'in',
  inches: 'in',
  thous: 'thou',
  thousandth: 'thou',
  thousandths: 'thou',
  mils: 'mil',
  mill: 'mil',
  mills: 'mil',
  tenths: 'tenth',
  millimetre: 'mm',
  millimetres: 'mm',
  millimeter: 'mm',
  millimeters: 'mm',
  micron: 'um',
  microns: 'um',
  micrometre: 'um',
  micrometres: 'um',
  micrometer: 'um',
  micrometers: 'um',
  lbs: 'lb',
  pound: 'lb',
  pounds: 'lb',
  newton: 'n',
  newtons: 'n',
  degs: 'deg',
  degree: 'deg',
  degrees: 'deg',
  hertz: 'hz',
  ounce: 'oz',
  ounces: 'oz',
  kilogram: 'kg',
  kilograms: 'kg',
  kilogramme: 'kg',
  kilogrammes: 'kg',
  gram: 'g',
  grams: 'g',
  gramme: 'g',
  grammes: 'g',
  gigapascal: 'gpa',
  gigapascals: 'gpa',
  kelvin: 'k',
  kelvins: 'k',
  per: '/',
  fahrenheit: 'f',
  celsius: 'c',
  t: 'turn',
  turns: 'turn',
};

const SPELLINGS: Record<string, NamedUnit> = {
  in: 'in',
  thou: 'thou',
  'thou in': 'thou',
  mm: 'mm',
  um: 'um',
  mil: 'mil',
  tenth: 'tenth',
  'tenth in': 'tenth-inch',
  'tenth thou': 'ten-thousandth',
  'ten thou': 'ten-thousandth',
  lbf: 'lbf',
  'lb force': 'lbf',
  lb: 'lb',
  n: 'N',
  'lbf / in': 'lbf/in',
  'lb / in': 'lbf/in',
  'n / mm': 'N/mm',
  deg: 'deg',
  rpm: 'rpm',
  'rev / min': 'rpm',
  'r / min': 'rpm',
  hz: 'Hz',
  oz: 'oz',
  kg: 'kg',
  g: 'g',
  psi: 'psi',
  'lb / square in': 'psi',
  gpa: 'GPa',
  'lb / in 3': 'lb/in3',
  'lb / cu in': 'lb/in3',
  'lb / cubic in': 'lb/in3',
  'kg / m 3': 'kg/m3',
  'kg / cubic metre': 'kg/m3',
  'kg / cubic meter': 'kg/m3',
  degf: 'degF',
  'deg f': 'degF',
  f: 'degF',
  degc: 'degC',
  'deg c': 'degC',
  c: 'degC',
  k: 'K',
  'in / lbf': 'in/lbf',
  'in / lb': 'in/lbf',
  'mm / n': 'mm/N',
  '1 / k': '1/K',
  '/ k': '1/K',
  '/ degc': '1/K',
  '/ deg c': '1/K',
  '1 / degc': '1/K',
  '1 / deg c': '1/K',
  turn: 'turn',
};

/** Words between a number and its unit: half `of an` inch. */
const FILLERS = new Set(['of', 'a', 'an', '^']);

/** The unit that a list of words names, or undefined. Pounds stay `lb`: the kind decides what they are. */
export function unitOfWords(words: readonly string[]): NamedUnit | undefined {
  const spelling = words
    .filter((word) => !FILLERS.has(word))
    .map((word) => (Object.hasOwn(WORDS, word) ? WORDS[word] : word))
    .join(' ');
  if (Object.hasOwn(SPELLINGS, spelling)) return SPELLINGS[spelling];
  return isUnit(spelling) ? spelling : undefined;
}
