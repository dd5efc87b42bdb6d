/** A piece of the text: a written number, a word, or a single mark. */
export interface Token {
  readonly kind: 'number' | 'word' | 'mark';
  readonly text: string;
  /** Whether white space stands before it. */
  readonly spaced: boolean;
}

const NUMBER = /(?:\d+(?:[.,]\d+)*\.?|[.,]\d+(?:[.,]\d+)*)(?:e[+-]?\d+)?/y;
const WORD = /[a-z]+/y;

function matchAt(pattern: RegExp, text: string, at: number): string | undefined {
  pattern.lastIndex = at;
  return pattern.exec(text)?.[0];
}

function split(text: string): Token[] {
  const tokens: Token[] = [];
  let at = 0;
  let spaced = false;
  while (at < text.length) {
    const character = text.charAt(at);
    if (character === ' ') {
      spaced = true;
      at += 1;
      continue;
    }
    const number = matchAt(NUMBER, text, at);
    const word = number === undefined ? matchAt(WORD, text, at) : undefined;
    const piece = number ?? word ?? character;
    const kind = number !== undefined ? 'number' : word !== undefined ? 'word' : 'mark';
    tokens.push({ kind, text: piece, spaced });
    spaced = false;
    at += piece.length;
  }
  return tokens;
}

/** The hyphen of `forty-two` or `1-inch`, and the full stop of `in.`, say nothing of their own. */
function isSilent(tokens: readonly Token[], index: number): boolean {
  const token = tokens[index];
  if (token?.kind !== 'mark') return false;
  const before = tokens[index - 1];
  const after = tokens[index + 1];
  if (token.text === '.') return !token.spaced && before?.kind === 'word';
  if (token.text !== '-' || token.spaced || after === undefined || after.spaced) return false;
  const joins = (token: Token | undefined) => token?.kind === 'word' || token?.kind === 'number';
  return joins(before) && joins(after) && (before?.kind === 'word' || after.kind === 'word');
}

/** Cuts normalised text into tokens. */
export function tokenise(text: string): Token[] {
  const tokens = split(text);
  return tokens.filter((_, index) => !isSilent(tokens, index));
}
