import { hearPart, hearSmall, wordAt } from './spoken-words.ts';
import type { Token } from './tokens.ts';
import { wholeNumber } from './written-number.ts';

/** A vulgar fraction: `7/16`, `7 sixteenths`, `seven sixteenths`, `a quarter`, `half`. */
export interface Part {
  readonly numerator: number;
  readonly denominator: number;
  readonly next: number;
}

function written(tokens: readonly Token[], at: number): Part | undefined {
  const [over, under] = [tokens[at], tokens[at + 2]];
  if (over?.kind !== 'number' || tokens[at + 1]?.text !== '/' || under?.kind !== 'number') return undefined;
  const numerator = wholeNumber(over.text);
  const denominator = wholeNumber(under.text);
  if (numerator === undefined || denominator === undefined) return undefined;
  return { numerator, denominator, next: at + 3 };
}

function counted(tokens: readonly Token[], at: number): { numerator: number; next: number } {
  const token = tokens[at];
  const count = token?.kind === 'number' ? wholeNumber(token.text) : undefined;
  if (count !== undefined) return { numerator: count, next: at + 1 };
  const heard = hearSmall(tokens, at);
  if (heard !== undefined) return { numerator: heard.value, next: heard.next };
  const article = wordAt(tokens, at) === 'a' || wordAt(tokens, at) === 'an';
  return { numerator: 1, next: article ? at + 1 : at };
}

export function readPart(tokens: readonly Token[], at: number): Part | undefined {
  const fraction = written(tokens, at);
  if (fraction !== undefined) return fraction;
  const count = counted(tokens, at);
  const part = hearPart(tokens, count.next);
  return part && { numerator: count.numerator, denominator: part.value, next: part.next };
}
