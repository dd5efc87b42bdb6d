import { isUnit, UNITS, type Unit } from './units.ts';

/** What a unit text can mean beside a unit of the table. */
export type NamedUnit =
  | Unit
  | 'mil'
  | 'tenth'
  | 'tenth-inch'
  | 'ten-thousandth'
  | 'tenth-mm'
  | 'hundredth-mm'
  | 'turn';

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
  hundredths: 'hundredth',
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

/** Parts of the inch and the millimetre that have no unit of their own, and turns. */
const NAMED: Readonly<Record<string, NamedUnit>> = {
  mil: 'mil',
  tenth: 'tenth',
  'tenth in': 'tenth-inch',
  'tenth thou': 'ten-thousandth',
  'ten thou': 'ten-thousandth',
  'tenth mm': 'tenth-mm',
  'hundredth mm': 'hundredth-mm',
  turn: 'turn',
};

const SPELLINGS: ReadonlyMap<string, NamedUnit> = new Map([
  ...Object.keys(UNITS)
    .filter(isUnit)
    .flatMap((unit) => UNITS[unit].written.map((text): [string, NamedUnit] => [text, unit])),
  ...Object.entries(NAMED),
]);

/** Words between a number and its unit: half `of an` inch. */
const FILLERS = new Set(['of', 'a', 'an', '^']);

/** Three hundred pounds `an` inch is three hundred to the inch. */
const FORCES = new Set(['lb', 'lbs', 'pound', 'pounds', 'newton', 'newtons']);

/** The unit that a list of words names, or undefined. Pounds stay `lb`: the kind decides what they are. */
export function unitOfWords(words: readonly string[]): NamedUnit | undefined {
  const spelling = words
    .map((word, at) => (['a', 'an'].includes(word) && FORCES.has(words[at - 1] ?? '') ? 'per' : word))
    .filter((word) => !FILLERS.has(word))
    .map((word) => (Object.hasOwn(WORDS, word) ? WORDS[word] : word))
    .join(' ');
  return SPELLINGS.get(spelling) ?? (isUnit(spelling) ? spelling : undefined);
}
