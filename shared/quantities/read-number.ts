import { exampleOf, isBare, kindName } from './kind-words.ts';
import { normaliseText, quoteText } from './normalise-text.ts';
import { type NumberKind, type NumberReading, type ReadOptions, refuse } from './number-types.ts';
import { isHeld, type NumberValue, readValue } from './number-value.ts';
import { settle } from './settle-meanings.ts';
import { hearSmall } from './spoken-words.ts';
import { type Token, tokenise } from './tokens.ts';
import { readTurns, turnsAt } from './turns-reading.ts';
import { bareMeanings, unitlessMeanings, unitMeanings } from './unit-meanings.ts';
import { unitOfWords } from './unit-words.ts';
import { dimensionOf } from './units.ts';

export type {
  Ambiguity,
  NumberFaultCode,
  NumberKind,
  NumberRead,
  NumberReading,
  ReadOptions,
} from './number-types.ts';

const LONGEST_TEXT = 200;

/** `1.6:1` and `1.6 to 1` are the same ratio as `1.6`. */
function withoutToOne(tokens: readonly Token[]): readonly Token[] {
  const [joint, one] = tokens.slice(-2);
  const toOne = (joint?.text === ':' || joint?.text === 'to') && (one?.text === '1' || one?.text === 'one');
  return toOne ? tokens.slice(0, -2) : tokens;
}

function optionFault(options: ReadOptions): NumberReading | undefined {
  const { assume, kind, perTurn } = options;
  if (assume !== undefined && dimensionOf(assume) !== kind) {
    return refuse('wrong-dimension', `The assumed unit ${assume} is no unit of a ${kindName(kind)}.`);
  }
  if (perTurn === undefined) return undefined;
  if (dimensionOf(perTurn.unit) !== 'length') {
    return refuse('wrong-dimension', 'The travel per turn must be a length.');
  }
  if (Number.isFinite(perTurn.value) && perTurn.value > 0) return undefined;
  return refuse('out-of-range', 'The travel per turn must be above zero.');
}

function textFault(text: string): NumberReading | undefined {
  if (text.length > LONGEST_TEXT) {
    return refuse('not-allowed', `The text has ${text.length} characters; ${LONGEST_TEXT} at the most.`);
  }
  return normaliseText(text) === ''
    ? refuse('required', 'Nothing was entered; a number is needed.')
    : undefined;
}

/** What is where a unit could, and yet is no word of one: another number, a control character. */
function isStray(rest: readonly Token[]): boolean {
  const words = rest.map((token) => token.text);
  if (rest.length === 0 || unitOfWords(words) !== undefined) return false;
  const digits = rest.some((token) => token.kind === 'number' && !(token.text === '2' || token.text === '3'));
  const arithmetic = /^[-+*/=,.:]$/.test(words[0] ?? '');
  const spoken = /^(?:and|hundred|thousand|point)$/.test(words[0] ?? '') || hearSmall(rest, 0) !== undefined;
  return digits || arithmetic || spoken || /\p{Cc}/u.test(words.join(''));
}

/** Words that say that a figure is none that was read. */
const HEDGES: ReadonlySet<string> = new Set([
  'about',
  'approx',
  'approximately',
  'around',
  'ca',
  'circa',
  'nearly',
  'roughly',
  'say',
  '~',
  '≈',
]);

/** The word by which a figure is said to be none that was read: before it, or `or so` behind it. */
function hedgeOf(tokens: readonly Token[]): string | undefined {
  const words = tokens.map(({ text }) => text);
  const [first = ''] = words;
  if (HEDGES.has(first)) return first;
  return words.slice(-2).join(' ') === 'or so' ? 'or so' : undefined;
}

function numberFault(
  number: NumberValue | undefined,
  tokens: readonly Token[],
  kind: NumberKind,
  came: string,
): NumberReading | undefined {
  const hint = `write it like ${exampleOf(kind)}.`;
  const hedge = hedgeOf(tokens);
  // A guess kept as a reading would be taken for one: who says it says so beside the figure.
  if (hedge !== undefined)
    return refuse(
      'not-a-number',
      `${came} says “${hedge}”: leave that out, and where the figure is a guess say so beside it; ${hint}`,
    );
  if (number === undefined) return refuse('not-a-number', `${came} is not a number; ${hint}`);
  if (number.denominator === 0) return refuse('not-a-number', `${came} divides by zero; ${hint}`);
  if (turnsAt(tokens) < 0 && isStray(tokens.slice(number.next))) {
    return refuse('not-a-number', `${came} is not one number with a unit; ${hint}`);
  }
  if (isHeld(number)) return undefined;
  return refuse('out-of-range', `${came} is beyond the numbers that can be used.`);
}

function meaningsOf(number: NumberValue, tokens: readonly Token[], options: ReadOptions, came: string) {
  const words = tokens.slice(number.next).map((token) => token.text);
  const { kind } = options;
  if (words.length > 0) return unitMeanings(number, words, options, came);
  return isBare(kind)
    ? bareMeanings(number, kind, came)
    : unitlessMeanings(number, kind, options.assume, came);
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
 * - `mil` is asked always (millimetre or thousandth), a bare `tenth` too (of a thousandth or of an inch),
 *   and `five ten thousandths` (5 of .0001 in or 510 thousandths).
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
  if (at >= 0 && (options.kind === 'turns' || options.kind === 'length')) {
    return readTurns(tokens, at, options, came);
  }
  const number = readValue(tokens, 0);
  const fault = numberFault(number, tokens, options.kind, came);
  if (number === undefined || fault !== undefined) {
    return fault ?? refuse('not-a-number', `${came} is not a number.`);
  }
  if (options.kind === 'turns' && number.next === tokens.length && number.run === undefined) {
    const turns = { kind: 'word', text: 'turns', spaced: true } as const;
    return readTurns([...tokens, turns], tokens.length, options, came);
  }
  const meanings = meaningsOf(number, tokens, options, came);
  return 'ok' in meanings ? meanings : settle(meanings, came);
}
