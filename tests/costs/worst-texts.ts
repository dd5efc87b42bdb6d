/** What a stranger can send in a text: each piece is repeated until the text is as long as it may be. */
const PIECES = {
  'blank lines': '\n',
  'lines of the other kind': '\r\n',
  spaces: ' ',
  commas: ',',
  tabs: '\t',
  'one long word': 'a',
  'brackets in one another': '([',
  'quotation marks': '"',
  'quoted commas': '",',
  digits: '1',
  'letters that combine': 'e\u0301\u0302',
  fractions: '1 1/2 ',
  'said numbers': 'four thirty five and a half ',
  'rows of a sheet': '1,intake,.350,.016\n',
  'heads of a sheet': 'cylinder,lobe lift,notes,',
  signs: '-+./×',
} as const;
export type KindOfText = keyof typeof PIECES;

const isKind = (name: string): name is KindOfText => name in PIECES;
export const KINDS_OF_TEXT: readonly KindOfText[] = Object.keys(PIECES).filter(isKind);

/** A text of this kind that takes no more than so many bytes once it is written as `written` writes it. */
export function worstText(kind: KindOfText, bytes: number, written: (text: string) => number): string {
  const piece = PIECES[kind];
  const each = written(piece.repeat(100)) / 100;
  // By fours: of an odd number of quotation marks another thing is wrong than of an even one.
  return piece.repeat(Math.max(1, Math.floor(bytes / each / 4) * 4));
}

/** Deals kinds out in turn, so that over many fields each kind comes to each way of reading. */
export function dealer(): (count: number) => KindOfText[] {
  let dealt = 0;
  return (count) =>
    Array.from({ length: count }, () => {
      dealt += 1;
      return KINDS_OF_TEXT[dealt % KINDS_OF_TEXT.length] ?? 'spaces';
    });
}
