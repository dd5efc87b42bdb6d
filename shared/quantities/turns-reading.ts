import { meaningsIn, showValue, tidy } from './echo.ts';
import { writeExact } from './format.ts';
import { type NumberReading, type ReadOptions, refuse } from './number-types.ts';
import { isHeld, type NumberValue, readValue } from './number-value.ts';
import { readPart } from './part-number.ts';
import type { Token } from './tokens.ts';
import { unitOfWords } from './unit-words.ts';
import { dimensionOf, fromSi, isUnit, type Quantity, toSi } from './units.ts';

const FILLERS = new Set(['of', 'a', 'and', 'plus', ',']);

/** Where `turns` stands, or -1. */
export function turnsAt(tokens: readonly Token[]): number {
  return tokens.findIndex((token) => token.kind === 'word' && unitOfWords([token.text]) === 'turn');
}

function skipFillers(tokens: readonly Token[], at: number): number {
  let next = at;
  while (FILLERS.has(tokens[next]?.text ?? '')) next += 1;
  return next;
}

/** How far the hand stands past the turn: the bare number is that printed on the dial. */
function needleLength(number: NumberValue, value: number, perTurn: Quantity): Quantity {
  const below = number.shape === 'decimal' && value < 1 && value > 0;
  if (below || number.shape === 'said-point') return { value, unit: perTurn.unit };
  const dial = perTurn.unit === 'in' || perTurn.unit === 'thou' ? 'inch' : 'metric';
  if (dial === 'inch') return { value, unit: 'thou' };
  // Dials of a hundredth are numbered in hundredths; those of a thousandth turn in .2 mm or less.
  const finest = toSi(perTurn) <= 0.2e-3 * (1 + 1e-9) ? 1000 : 100;
  return { value: tidy(value / finest), unit: 'mm' };
}

type Needle = { readonly quantity: Quantity; readonly said: string } | NumberReading;

function readNeedle(tokens: readonly Token[], at: number, perTurn: Quantity | undefined, came: string): Needle {
  const number = readValue(tokens, at);
  const reading = number?.readings[0];
  if (number === undefined || reading === undefined || number.readings.length > 1 || number.sign < 0 || !isHeld(number)) {
    return refuse('not-a-number', `${came}: what follows the turns is no needle reading; write it as 3 turns 42.`);
  }
  if (perTurn === undefined) {
    return refuse('required', `${came} needs the dial's travel per turn of the big hand; settle that first.`);
  }
  const words = tokens.slice(number.next).map((token) => token.text);
  const unit = words.length === 0 ? undefined : unitOfWords(words);
  if (words.length > 0 && (unit === undefined || !isUnit(unit) || dimensionOf(unit) !== 'length')) {
    return refuse('unknown-unit', `${came}: the needle's unit is not a length; use in, thou, mm or um, or none.`);
  }
  const given = unit !== undefined && isUnit(unit) ? { value: reading.value, unit } : undefined;
  const quantity = given ?? needleLength(number, reading.value, perTurn);
  const bare = writeExact(reading.value, reading.places, undefined);
  return { quantity, said: given ? `${bare} ${given.unit}` : bare };
}

function turnWord(turns: number): string {
  return Math.abs(turns) <= 1 && turns !== 0 ? 'turn' : 'turns';
}

/** The finished reading of `turns` whole turns or parts, with the needle if there is one. */
function settled(
  turns: number,
  said: string,
  options: ReadOptions,
  needle: Quantity | undefined,
): NumberReading {
  const { perTurn } = options;
  if (perTurn === undefined) {
    if (options.kind === 'turns') return { ok: true, value: turns, turns, readAs: said };
    return refuse('required', `${said}: a length in turns needs the dial's travel per turn of the big hand.`);
  }
  const value = tidy(turns * perTurn.value);
  const length = { value: value === 0 ? 0 : value, unit: perTurn.unit };
  const least = perTurn.unit === 'in' ? 3 : 2;
  const readAs = `${said} = ${showValue(length.value, least, length.unit)}`;
  if (options.kind === 'length') return { ok: true, ...length, readAs };
  const reading = { ok: true as const, value: turns, turns, readAs, length };
  return needle === undefined ? reading : { ...reading, needle };
}

/** `3 turns 42`: whole turns by the small hand, then the number under the big hand. */
export function readTurns(
  tokens: readonly Token[],
  at: number,
  options: ReadOptions,
  came: string,
): NumberReading {
  const number = readValue(tokens, 0);
  const [first, ...others] = number?.readings ?? [];
  if (number === undefined || first === undefined || skipFillers(tokens, number.next) !== at) {
    return refuse('not-a-number', `${came} does not begin with a number of turns; write it as 3 turns 42.`);
  }
  if (number.denominator === 0) return refuse('not-a-number', `${came} divides by nought; write it as 3 turns 42.`);
  if (!isHeld(number)) return refuse('out-of-range', `${came} is beyond the numbers that can be reckoned with.`);
  if (others.length > 0) {
    const choices = meaningsIn(number, undefined).map((each) => ({
      readAs: `${each.readAs} turns`,
      quantity: { value: each.value },
      question: each.question ?? '',
    }));
    return { ok: false, ambiguities: choices };
  }
  const sign = number.sign < 0 ? '\u2212' : '';
  const shown = number.fraction && number.shape !== 'run' ? number.fraction : writeExact(first.value, first.places, undefined);
  const count = `${sign}${shown.startsWith('.') ? `0${shown}` : shown} ${turnWord(first.value)}`;
  const rest = skipFillers(tokens, at + 1);
  if (rest >= tokens.length) {
    if (at + 1 < tokens.length) return refuse('not-a-number', `${came} ends after the turns; write it as 3 turns 42.`);
    return settled(number.sign * first.value, count, options, undefined);
  }
  const part = readPart(tokens, skipFillers(tokens, at + 1));
  if (!Number.isInteger(first.value)) {
    return refuse('not-allowed', `${came} has a part of a turn and a needle reading; give whole turns and the needle.`);
  }
  if (part !== undefined && part.next === tokens.length && part.denominator > part.numerator) {
    const turns = first.value + part.numerator / part.denominator;
    return settled(number.sign * turns, `${sign}${first.value} ${part.numerator}/${part.denominator} turns`, options, undefined);
  }
  const needle = readNeedle(tokens, rest, options.perTurn, came);
  if ('ok' in needle || options.perTurn === undefined) return 'ok' in needle ? needle : settled(first.value, count, options, undefined);
  const share = toSi(needle.quantity) / toSi(options.perTurn);
  if (share >= 1 - 1e-12) {
    const turn = showValue(options.perTurn.value, 3, options.perTurn.unit);
    return refuse('out-of-range', `${came}: the needle stands a full turn or more on (one turn is ${turn}); count that as a turn.`);
  }
  const inTurnUnit = tidy(fromSi(toSi(needle.quantity), options.perTurn.unit).value);
  const turns = tidy(first.value + inTurnUnit / options.perTurn.value);
  return settled(number.sign * turns, `${count} ${needle.said}`, options, needle.quantity);
}
