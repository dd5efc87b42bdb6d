import { meaning, meaningsIn, tidy } from './echo.ts';
import { lengthInMil, lengthInTenths, lengthInUnit, lengthWithoutUnit } from './length-meanings.ts';
import { normaliseText, quoteText } from './normalise-text.ts';
import { type Meaning, type NumberReading, type ReadOptions, refuse } from './number-types.ts';
import { isHeld, type NumberValue, readValue } from './number-value.ts';
import { settle } from './settle-meanings.ts';
import { type Token, tokenise } from './tokens.ts';
import { readTurns, turnsAt } from './turns-reading.ts';
import { type NamedUnit, unitOfWords } from './unit-words.ts';
import { type Dimension, dimensionOf, isUnit, type Unit, unitsOf } from './units.ts';

export type {
  Ambiguity,
  NumberFaultCode,
  NumberKind,
  NumberRead,
  NumberReading,
  ReadOptions,
} from './number-types.ts';

export const LONGEST_TEXT = 200;

function isBare(kind: ReadOptions['kind']): kind is 'ratio' | 'turns' | 'count' {
  return kind === 'ratio' || kind === 'turns' || kind === 'count';
}

/** `1.6:1` and `1.6 to 1` are the same ratio as `1.6`. */
function withoutToOne(tokens: readonly Token[]): readonly Token[] {
  const [joint, one] = tokens.slice(-2);
  const toOne = (joint?.text === ':' || joint?.text === 'to') && (one?.text === '1' || one?.text === 'one');
  return toOne ? tokens.slice(0, -2) : tokens;
}

function bareNumber(number: NumberValue, options: ReadOptions, came: string): Meaning[] | NumberReading {
  const run = number.run;
  if (options.kind === 'count') {
    const whole = number.readings.filter((reading) => Number.isInteger(reading.value) && number.sign > 0);
    if (whole.length === 0) return refuse('out-of-range', `${came} is not a count; give a whole number from 0 up.`);
    return whole.map((reading) => meaning(reading.value, undefined, whole.length > 1 ? reading : {}));
  }
  if (run === undefined) return meaningsIn(number, undefined);
  if (options.kind === 'turns') {
    return refuse('not-a-number', `${came} leaves open where the turns end; say it as "three turns forty-two".`);
  }
  const head = run.groups[0] ?? '';
  const scale = head.length === 1 && head !== '0' ? 10 ** (run.digits.length - 1) : 1;
  return [meaning(number.sign * tidy((Number(run.digits) + run.part) / scale), undefined)];
}

function withUnit(number: NumberValue, unit: Unit): Meaning[] {
  return dimensionOf(unit) === 'length' ? lengthInUnit(number, unit) : meaningsIn(number, unit);
}

/** Without a unit: what the assumed one allows, or a fault that names the units. */
function withoutUnit(number: NumberValue, dimension: Dimension, assume: Unit | undefined, came: string) {
  const meanings =
    dimension === 'length'
      ? lengthWithoutUnit(number, assume)
      : assume === undefined
        ? []
        : meaningsIn(number, assume);
  if (meanings.length > 0) return meanings;
  const units = unitsOf(dimension).join(', ');
  const name = dimension.replace('-', ' ');
  return refuse('wrong-dimension', `${came} has no unit, and a bare number is not a ${name}; add one of ${units}.`);
}

const NAMES: Partial<Record<NamedUnit, Dimension>> = { mil: 'length', tenth: 'length', 'deg-rise': 'angle' };

function dimensionNamed(unit: NamedUnit): Dimension | 'turns' {
  if (isUnit(unit)) return dimensionOf(unit);
  return NAMES[unit] ?? 'turns';
}

/** Pounds are a load or a mass, degrees an angle or a rise of temperature: the kind decides. */
function unitsFor(unit: NamedUnit, options: ReadOptions): NamedUnit[] {
  if (options.kind === 'load' && unit === 'lb') return ['lbf'];
  if (options.kind === 'temperature-rise' && unit === 'deg') {
    const assumed = options.assume === 'degF' || options.assume === 'degC';
    return assumed && options.assume ? [options.assume] : ['degF', 'degC'];
  }
  return [unit];
}

function inNamedUnit(number: NumberValue, words: readonly string[], options: ReadOptions, came: string) {
  const named = unitOfWords(words);
  const written = quoteText(words.join(' '));
  const allowed = isBare(options.kind) ? 'no unit' : unitsOf(options.kind).join(', ');
  if (named === undefined) {
    return refuse('unknown-unit', `${came}: the unit ${written} is not known; use ${allowed}.`);
  }
  const found = unitsFor(named, options).flatMap((unit): Meaning[] => {
    if (dimensionNamed(unit) !== options.kind) return [];
    if (unit === 'mil') return lengthInMil(number);
    if (unit === 'tenth') return lengthInTenths(number);
    return isUnit(unit) ? withUnit(number, unit) : [];
  });
  if (found.length > 0) return found;
  const name = options.kind.replace('-', ' ');
  return refuse('wrong-dimension', `${came} is in ${written}, which is no unit of a ${name}; use ${allowed}.`);
}

function optionFault(options: ReadOptions): NumberReading | undefined {
  const { assume, kind, perTurn } = options;
  if (assume !== undefined && dimensionOf(assume) !== kind) {
    return refuse('wrong-dimension', `The assumed unit ${assume} is no unit of a ${kind.replace('-', ' ')}.`);
  }
  if (perTurn === undefined) return undefined;
  if (dimensionOf(perTurn.unit) !== 'length') {
    return refuse('wrong-dimension', 'The travel per turn must be a length.');
  }
  if (Number.isFinite(perTurn.value) && perTurn.value > 0) return undefined;
  return refuse('out-of-range', 'The travel per turn must be above nought.');
}

function textFault(text: string): NumberReading | undefined {
  if (text.length > LONGEST_TEXT) {
    return refuse('not-allowed', `The text has ${text.length} characters; ${LONGEST_TEXT} at the most.`);
  }
  return normaliseText(text) === '' ? refuse('required', 'Nothing was entered; a number is needed.') : undefined;
}

/**
 * Reads a number as people write and say it: `.482`, `482 thou`, `12,24 mm`, `1-5/8"`,
 * `four thirty-five and a half`, `5 turns 66`. It never guesses: either there is one meaning, or the
 * meanings are listed to ask about, the most natural first, or a fault says what to write instead.
 *
 * Numbers
 * - A comma is a decimal comma, except in `1,234`, which is asked. `1,234.5` and `1.234,5` are clear.
 * - Fractions are exact; a hyphen or `and` may join them to the whole (`1-5/8`, `1 and 5/8`).
 * - Digits said in a row (`eight forty-two`, `oh six`) are thousandths or the digits after the point of
 *   an inch; with three digits both are the same.
 *
 * Units
 * - `mil` is asked always (millimetre or thousandth), `tenth` too (ten-thousandth or tenth of an inch).
 * - `lb` is a force for a load and a mass for a mass. `degrees` of a temperature rise are asked unless
 *   one of degF, degC is assumed.
 * - Without a unit and with none assumed, a written number of a kind with a dimension is refused; one
 *   said as hundreds or in a row is asked (thousandths or millimetres) when a length is wanted.
 *
 * A length without a unit where inches are assumed
 * - written, below 10: inches. Fractions and mixed numbers in thirds, eighths or finer: inches.
 * - written, 10 and above: asked; thousandths first, inches first when three or more places are written.
 * - said in a row: thousandths when they equal the digits after the point (`eight forty-two`, `oh
 *   sixty`), else asked (`oh six`: .006 or .06; `twelve fifty`: 1.250 or .1250).
 * - said as a number of 100 or more (`four hundred eighty-two`): thousandths, no inch part is so long.
 * - said as a number below 100 (`seven`, `twelve and a quarter`): asked; inches first below 10.
 * - said with a point: like a written one, except that 100 and above are thousandths.
 *
 * Turns of a dial need `perTurn` as soon as a needle reading follows them. A bare needle reading is the
 * number printed on the dial: thousandths of an inch, or hundredths of a millimetre (thousandths on a
 * dial of .2 mm a turn or less); with a decimal point and below 1 it is in the unit of `perTurn`.
 *
 * A ratio said in a row with one digit first has its point after that (`one sixty-five` is 1.65).
 */
export function readNumber(text: string, options: ReadOptions): NumberReading {
  const early = textFault(text) ?? optionFault(options);
  if (early !== undefined) return early;
  const came = quoteText(text.trim());
  const all = tokenise(normaliseText(text));
  const tokens = options.kind === 'ratio' ? withoutToOne(all) : all;
  const at = turnsAt(tokens);
  if (at >= 0 && (options.kind === 'turns' || options.kind === 'length')) return readTurns(tokens, at, options, came);
  const number = readValue(tokens, 0);
  const rest = tokens.slice(number?.next ?? 0);
  const stray = rest.some((token, index) => token.kind === 'number' && index === 0 && rest[1]?.text !== '/');
  if (number === undefined || stray || number.denominator === 0) {
    const why = number?.denominator === 0 ? 'divides by nought' : 'is not a number';
    return refuse('not-a-number', `${came} ${why}; write it like .482 in, 482 thou, 12.24 mm or 7/16 in.`);
  }
  if (!isHeld(number)) {
    return refuse('out-of-range', `${came} is beyond the numbers that can be reckoned with.`);
  }
  const words = rest.map((token) => token.text);
  const meanings =
    words.length > 0
      ? inNamedUnit(number, words, options, came)
      : isBare(options.kind)
        ? bareNumber(number, options, came)
        : withoutUnit(number, options.kind, options.assume, came);
  return Array.isArray(meanings) ? settle(meanings, options, came) : meanings;
}
