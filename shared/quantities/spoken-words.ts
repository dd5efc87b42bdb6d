import type { Token } from './tokens.ts';

const DIGITS: Record<string, number> = {
  oh: 0,
  o: 0,
  zero: 0,
  nought: 0,
  naught: 0,
  one: 1,
  two: 2,
  three: 3,
  four: 4,
  five: 5,
  six: 6,
  seven: 7,
  eight: 8,
  nine: 9,
};
const TEENS: Record<string, number> = {
  ten: 10,
  eleven: 11,
  twelve: 12,
  thirteen: 13,
  fourteen: 14,
  fifteen: 15,
  sixteen: 16,
  seventeen: 17,
  eighteen: 18,
  nineteen: 19,
};
const TENS: Record<string, number> = {
  twenty: 20,
  thirty: 30,
  forty: 40,
  fourty: 40,
  fifty: 50,
  sixty: 60,
  seventy: 70,
  eighty: 80,
  ninety: 90,
};
const PARTS: Record<string, number> = {
  half: 2,
  halves: 2,
  third: 3,
  quarter: 4,
  fourth: 4,
  eighth: 8,
  sixteenth: 16,
};

const own = (table: Record<string, number>, word: string) =>
  Object.hasOwn(table, word) ? table[word] : undefined;

/** A word or more read from a place: the number and the place after it. */
export interface Heard {
  readonly value: number;
  readonly next: number;
}

export function wordAt(tokens: readonly Token[], at: number): string {
  const token = tokens[at];
  return token?.kind === 'word' ? token.text : '';
}

/** A spoken number below a hundred: `oh`, `six`, `twelve`, `forty`, `forty two`. */
export function hearSmall(tokens: readonly Token[], at: number): Heard | undefined {
  const word = wordAt(tokens, at);
  const single = own(DIGITS, word) ?? own(TEENS, word);
  if (single !== undefined) return { value: single, next: at + 1 };
  const tens = own(TENS, word);
  // "thirty second", "sixty fourth" name a part, not a number.
  if (tens === undefined || hearPart(tokens, at) !== undefined) return undefined;
  const digit = own(DIGITS, wordAt(tokens, at + 1));
  return digit ? { value: tens + digit, next: at + 2 } : { value: tens, next: at + 1 };
}

/** The name of a part: `half`, `eighths`, `thirty seconds`; the value is the denominator. */
export function hearPart(tokens: readonly Token[], at: number): Heard | undefined {
  const word = wordAt(tokens, at);
  const part = own(PARTS, word) ?? (word.endsWith('s') ? own(PARTS, word.slice(0, -1)) : undefined);
  if (part !== undefined) return { value: part, next: at + 1 };
  const after = wordAt(tokens, at + 1);
  if (word === 'thirty' && (after === 'second' || after === 'seconds')) return { value: 32, next: at + 2 };
  if (word === 'sixty' && (after === 'fourth' || after === 'fourths')) return { value: 64, next: at + 2 };
  return undefined;
}
