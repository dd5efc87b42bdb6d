import { type Part, readPart } from './part-number.ts';
import { hearGroups, hearWhole, type SpokenWhole } from './spoken-number.ts';
import { wordAt } from './spoken-words.ts';
import type { Token } from './tokens.ts';
import { readWritten, type WrittenReading, wholeNumber } from './written-number.ts';

/** How a number was given; the rules for a length without a unit depend on it. */
type Shape = 'decimal' | 'fraction' | 'mixed' | 'said' | 'said-point' | 'run';

/** The number at the head of the text, before its unit is known. */
export interface NumberValue {
  readonly sign: 1 | -1;
  readonly shape: Shape;
  readonly readings: readonly WrittenReading[];
  readonly next: number;
  /** The fraction as people write it, `7/16` or `1 5/8`. */
  readonly fraction?: string;
  readonly denominator?: number;
  /** Digits said group after group: their groups, and the part of the last digit (`and a half`). */
  readonly run?: { readonly groups: readonly string[]; readonly digits: string; readonly part: number };
}

type Unsigned = Omit<NumberValue, 'sign'>;

function exactly(value: number, places = 0): WrittenReading[] {
  return [{ value, places }];
}

function fromPart(part: Part): Unsigned {
  return {
    shape: 'fraction',
    readings: exactly(part.numerator / part.denominator),
    next: part.next,
    fraction: `${part.numerator}/${part.denominator}`,
    denominator: part.denominator,
  };
}

function withPart(whole: number, part: Part, shape: 'mixed' | 'said'): Unsigned {
  return {
    shape,
    readings: exactly((whole * part.denominator + part.numerator) / part.denominator),
    next: part.next,
    fraction: `${whole} ${part.numerator}/${part.denominator}`,
    denominator: part.denominator,
  };
}

/** The fraction that may follow a whole number: `1 5/8`, `1-5/8`, `1 and 5/8`, `12 and a quarter`. */
function partAfter(tokens: readonly Token[], at: number): Part | undefined {
  if (wordAt(tokens, at) === 'and') return readPart(tokens, at + 1);
  const joint = tokens[at];
  const hyphen = joint?.text === '-' && !joint.spaced && tokens[at + 1]?.spaced === false;
  const start = hyphen ? at + 1 : at;
  return tokens[start]?.kind === 'number' ? readPart(tokens, start) : undefined;
}

function readDigits(tokens: readonly Token[], at: number, literal: string): Unsigned | undefined {
  const pure = readPart(tokens, at);
  if (pure !== undefined) return fromPart(pure);
  const whole = wholeNumber(literal);
  const part = whole === undefined ? undefined : partAfter(tokens, at + 1);
  if (whole !== undefined && part !== undefined) return withPart(whole, part, 'mixed');
  const readings = readWritten(literal);
  return readings.length === 0 ? undefined : { shape: 'decimal', readings, next: at + 1 };
}

function afterPoint(tokens: readonly Token[], whole: string, at: number): Unsigned | undefined {
  const said = hearGroups(tokens, at);
  if (said === undefined) return undefined;
  const value = Number(`${whole}.${said.digits}`);
  return { shape: 'said-point', readings: exactly(value, said.digits.length), next: said.next };
}

function fromWhole(tokens: readonly Token[], said: SpokenWhole): Unsigned | undefined {
  if (wordAt(tokens, said.next) === 'point') return afterPoint(tokens, said.digits, said.next + 1);
  const part = wordAt(tokens, said.next) === 'and' ? readPart(tokens, said.next + 1) : undefined;
  const whole = Number(said.digits);
  const value = part
    ? withPart(whole, part, 'said')
    : { shape: 'said' as const, readings: exactly(whole), next: said.next };
  if (said.groups.length === 1) return value;
  const share = part ? part.numerator / part.denominator : 0;
  return { ...value, shape: 'run', run: { groups: said.groups, digits: said.digits, part: share } };
}

function readSaid(tokens: readonly Token[], at: number): Unsigned | undefined {
  if (wordAt(tokens, at) === 'point') return afterPoint(tokens, '', at + 1);
  const pure = readPart(tokens, at);
  if (pure !== undefined) return fromPart(pure);
  const said = hearWhole(tokens, at);
  return said && fromWhole(tokens, said);
}

function signAt(token: Token | undefined): 1 | -1 | undefined {
  if (token?.text === '-' || token?.text === 'minus' || token?.text === 'negative') return -1;
  return token?.text === '+' || token?.text === 'plus' ? 1 : undefined;
}

/** Reads the number that begins at `start`; undefined when none does. */
export function readValue(tokens: readonly Token[], start: number): NumberValue | undefined {
  const sign = signAt(tokens[start]);
  const at = sign === undefined ? start : start + 1;
  const token = tokens[at];
  const value = token?.kind === 'number' ? readDigits(tokens, at, token.text) : readSaid(tokens, at);
  return value && { ...value, sign: sign ?? 1 };
}

/** Whether every reading is a number that can be used. */
export function isHeld(number: NumberValue): boolean {
  return number.readings.every((reading) => Number.isFinite(reading.value));
}
