/** Characters that people and their keyboards put for plainer ones. */
const PLAIN: Record<string, string> = {
  '\u2212': '-',
  '\u2010': '-',
  '\u2011': '-',
  '\u2012': '-',
  '\u2013': '-',
  '\uFE63': '-',
  '\uFF0D': '-',
  '\u2044': '/',
  '\u2215': '/',
  '\u201C': '"',
  '\u201D': '"',
  '\u2033': '"',
  '\u02BA': '"',
  '\u00B5': 'u',
  '\u03BC': 'u',
  '\u00B0': ' deg ',
  '\u00BA': ' deg ',
  '\u2103': ' degc ',
  '\u2109': ' degf ',
  '\u212A': 'k',
  '\u00B3': '3',
  '\u00BC': ' 1/4 ',
  '\u00BD': ' 1/2 ',
  '\u00BE': ' 3/4 ',
  '\u2153': ' 1/3 ',
  '\u2154': ' 2/3 ',
  '\u215B': ' 1/8 ',
  '\u215C': ' 3/8 ',
  '\u215D': ' 5/8 ',
  '\u215E': ' 7/8 ',
};

const SPACES = /\s/;
const INVISIBLE = /[\u200B\u200E\u200F\u2060\uFEFF]/;

/** The text in small letters and plain characters; what is not known stays as it is. */
export function normaliseText(text: string): string {
  let plain = '';
  for (const character of text) {
    if (INVISIBLE.test(character)) continue;
    plain += PLAIN[character] ?? (SPACES.test(character) ? ' ' : character.toLowerCase());
  }
  return plain.replaceAll("''", '"').trim();
}

/** The text as it can stand in a sentence: quoted, cut short, control characters written out. */
export function quoteText(text: string): string {
  let shown = '';
  for (const character of text.slice(0, 40)) {
    const code = character.codePointAt(0) ?? 0;
    const hidden = code < 32 || (code >= 127 && code < 160);
    shown += hidden ? `U+${code.toString(16).toUpperCase().padStart(4, '0')}` : character;
  }
  return `"${shown}${text.length > 40 ? '…' : ''}"`;
}
