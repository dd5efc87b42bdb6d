import { type Heard, hearPart, hearSmall, wordAt } from './spoken-words.ts';
import type { Token } from './tokens.ts';

/** A spoken whole number: its digits as said (`oh six` → `06`) and in how many groups. */
export interface SpokenWhole {
  readonly digits: string;
  readonly groups: readonly string[];
  readonly next: number;
}

/** `four hundred and eighty two`: the part after `hundred`. */
function hearHundreds(tokens: readonly Token[], start: Heard): Heard {
  if (wordAt(tokens, start.next) !== 'hundred') return start;
  const value = start.value * 100;
  const joined = wordAt(tokens, start.next + 1) === 'and' ? start.next + 2 : start.next + 1;
  const rest = hearSmall(tokens, joined);
  // "four hundred and five eighths": the small number belongs to the part that follows.
  if (rest === undefined || rest.value === 0 || hearPart(tokens, rest.next) !== undefined) {
    return { value, next: start.next + 1 };
  }
  return { value: value + rest.value, next: rest.next };
}

function hearCardinal(tokens: readonly Token[], first: Heard): Heard | undefined {
  const hundreds = hearHundreds(tokens, first);
  if (wordAt(tokens, hundreds.next) !== 'thousand')
    return hundreds.next === first.next ? undefined : hundreds;
  const value = hundreds.value * 1000;
  const joined = wordAt(tokens, hundreds.next + 1) === 'and' ? hundreds.next + 2 : hundreds.next + 1;
  const small = hearSmall(tokens, joined);
  if (small === undefined || small.value === 0) return { value, next: hundreds.next + 1 };
  const rest = hearHundreds(tokens, small);
  return { value: value + rest.value, next: rest.next };
}

/** `a hundred`, `a thousand`. */
function hearFirst(tokens: readonly Token[], at: number): Heard | undefined {
  const after = wordAt(tokens, at + 1);
  if (wordAt(tokens, at) === 'a' && (after === 'hundred' || after === 'thousand'))
    return { value: 1, next: at + 1 };
  return hearSmall(tokens, at);
}

/**
 * A spoken whole number, either as counted (`four hundred eighty two`) or as said on the phone, group
 * after group (`four eighty two`, `eight four two`, `oh six`).
 */
export function hearWhole(tokens: readonly Token[], at: number): SpokenWhole | undefined {
  const first = hearFirst(tokens, at);
  if (first === undefined) return undefined;
  const cardinal = hearCardinal(tokens, first);
  if (cardinal !== undefined) {
    return { digits: String(cardinal.value), groups: [String(cardinal.value)], next: cardinal.next };
  }
  return hearGroups(tokens, at);
}

/** Groups of digits one after another; a group that counts a part (`five eighths`) is not taken. */
export function hearGroups(tokens: readonly Token[], at: number): SpokenWhole | undefined {
  const groups: string[] = [];
  let next = at;
  for (let heard = hearSmall(tokens, next); heard !== undefined; heard = hearSmall(tokens, next)) {
    groups.push(String(heard.value));
    next = heard.next;
  }
  return groups.length === 0 ? undefined : { digits: groups.join(''), groups, next };
}
