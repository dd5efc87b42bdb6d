import { readNeedle } from './dial-needle.ts';
import { meaningsIn, showValue, tidy } from './echo.ts';
import { writeExact } from './format.ts';
import { normaliseText } from './normalise-text.ts';
import { type NumberReading, type ReadOptions, refuse } from './number-types.ts';
import { isHeld, type NumberValue, readValue } from './number-value.ts';
import { readPart } from './part-number.ts';
import { type Token, tokenise } from './tokens.ts';
import { unitOfWords } from './unit-words.ts';
import { fromSi, type Quantity, toSi } from './units.ts';

const FILLERS = new Set(['of', 'a', 'and', 'plus', ',']);

/** Where `turns` stands, or -1. */
export function turnsAt(tokens: readonly Token[]): number {
  return tokens.findIndex((token) => token.kind === 'word' && unitOfWords([token.text]) === 'turn');
}

/** Whether a text counts turns of a dial: `4 turns 37`. */
export const saysTurns = (text: string): boolean => turnsAt(tokenise(normaliseText(text))) >= 0;

function skipFillers(tokens: readonly Token[], at: number): number {
  let next = at;
  while (FILLERS.has(tokens[next]?.text ?? '')) next += 1;
  return next;
}

/** Turns as said, their number, and the needle where there is one. */
interface Counted {
  readonly turns: number;
  readonly said: string;
  readonly needle?: Quantity;
}

function turnReading({ turns, said, needle }: Counted, options: ReadOptions): NumberReading {
  const { perTurn } = options;
  if (perTurn === undefined) {
    if (options.kind === 'turns') return { ok: true, value: turns, turns, readAs: said };
    return refuse('required', `${said}: a length in turns needs the dial's travel per turn of the big hand.`);
  }
  const length = { value: tidy(turns * perTurn.value), unit: perTurn.unit };
  if (!Number.isFinite(toSi(length))) {
    return refuse('out-of-range', `${said} is beyond the lengths that can be used.`);
  }
  const readAs = `${said} = ${showValue(length.value, perTurn.unit === 'in' ? 3 : 2, length.unit)}`;
  if (options.kind === 'length') return { ok: true, ...length, readAs };
  const reading = { ok: true as const, value: turns, turns, readAs, length };
  return needle === undefined ? reading : { ...reading, needle };
}

function signed(number: NumberValue, turns: number): number {
  return turns === 0 ? 0 : number.sign * turns;
}

/** `3 turns`, `1/2 turn`, `−1.5 turns`. */
function sayTurns(number: NumberValue, value: number, places: number): string {
  const fraction = number.shape === 'run' ? undefined : number.fraction;
  const written = fraction ?? writeExact(value, places, undefined);
  const shown = written.startsWith('.') ? `0${written}` : written;
  return `${number.sign < 0 ? '\u2212' : ''}${shown} ${value > 0 && value <= 1 ? 'turn' : 'turns'}`;
}

/** `3 turns and a half` */
function withPart(number: NumberValue, whole: number, tokens: readonly Token[], at: number) {
  const part = readPart(tokens, at);
  if (part === undefined || part.next < tokens.length || part.numerator >= part.denominator) return undefined;
  const turns = signed(number, whole + part.numerator / part.denominator);
  const said = `${number.sign < 0 ? '\u2212' : ''}${whole} ${part.numerator}/${part.denominator} turns`;
  return { turns, said };
}

function withNeedle(
  number: NumberValue,
  whole: { readonly value: number; readonly said: string },
  tokens: readonly Token[],
  at: number,
  options: ReadOptions,
  came: string,
): NumberReading {
  const { perTurn } = options;
  if (perTurn === undefined) {
    return refuse('required', `${came} needs the dial's travel per turn of the big hand; settle that first.`);
  }
  const needle = readNeedle(tokens, at, perTurn, came);
  if (!needle.ok) return needle;
  const past = tidy(fromSi(toSi(needle.quantity), perTurn.unit).value / perTurn.value);
  if (!(past < 1)) {
    const turn = showValue(perTurn.value, 3, perTurn.unit);
    return refuse(
      'out-of-range',
      `${came}: the needle stands a full turn or more on (one turn is ${turn}); count that as a turn.`,
    );
  }
  const turns = signed(number, tidy(whole.value + past));
  return turnReading({ turns, said: `${whole.said} ${needle.said}`, needle: needle.quantity }, options);
}

/** Faults of the number in front of `turns`, and the question of its comma. */
function countFault(number: NumberValue, came: string): NumberReading | undefined {
  if (number.denominator === 0) {
    return refuse('not-a-number', `${came} divides by zero; write it as 3 turns 42.`);
  }
  if (!isHeld(number)) {
    return refuse('out-of-range', `${came} is beyond the numbers that can be used.`);
  }
  if (number.readings.length < 2) return undefined;
  const ambiguities = meaningsIn(number, undefined).map(({ value, readAs, question }) => ({
    readAs: `${readAs} turns`,
    quantity: { value },
    question: question ?? `Is it ${readAs} turns?`,
  }));
  return { ok: false, ambiguities };
}

/** `3 turns 42`: whole turns by the small hand, then the number under the big hand. */
export function readTurns(
  tokens: readonly Token[],
  at: number,
  options: ReadOptions,
  came: string,
): NumberReading {
  const number = readValue(tokens, 0);
  const first = number?.readings[0];
  if (number === undefined || first === undefined || skipFillers(tokens, number.next) !== at) {
    return refuse('not-a-number', `${came} does not begin with a number of turns; write it as 3 turns 42.`);
  }
  const fault = countFault(number, came);
  if (fault !== undefined) return fault;
  const said = sayTurns(number, first.value, first.places);
  if (at + 1 === tokens.length) return turnReading({ turns: signed(number, first.value), said }, options);
  const rest = skipFillers(tokens, at + 1);
  if (rest >= tokens.length) {
    return refuse('not-a-number', `${came} breaks off after the turns; write it as 3 turns 42.`);
  }
  if (!Number.isInteger(first.value)) {
    return refuse('not-allowed', `${came} has a part of a turn and more; give whole turns and the needle.`);
  }
  const parted = withPart(number, first.value, tokens, rest);
  if (parted !== undefined) return turnReading(parted, options);
  return withNeedle(number, { value: first.value, said }, tokens, rest, options, came);
}
