/** What parts the columns of a row: a tab or a semicolon, else a comma. */
const markOf = (text: string): string | undefined => ['\t', ';', ','].find((each) => text.includes(each));

/** A quote that opens a cell closes it; marks between the two are of the cell. Any other quote is an inch mark. */
function quotedParts(row: string, mark: string): string[] {
  const parts: string[] = [];
  let cell = '';
  let isQuoted = false;
  for (const sign of row) {
    if (sign === '"' && (isQuoted || cell.trim() === '')) isQuoted = !isQuoted;
    else if (sign === mark && !isQuoted) {
      parts.push(cell);
      cell = '';
    } else if (sign !== '"') cell += sign;
  }
  return [...parts, cell];
}

/** Outside of quoted cells. */
const unquoted = (row: string): string => row.replaceAll(/"[^"]*"/g, '');

/** Cells between such marks, in their places. */
export function partsOf(row: string): string[] {
  const mark = markOf(unquoted(row));
  return (mark === undefined ? [row.replaceAll('"', '')] : quotedParts(row, mark)).map((cell) => cell.trim());
}

/** `4 2,41` and `4, 2,41`: the comma between digits is the decimal one, and the mark before them parts the columns. */
const DECIMAL_COMMA = /^([^,]*[^\s,])(?:\s+|,\s+)([-−]?\d*,\d+[^\d,]*)$/;
const BLANK = /^(.*?(?:tdc|before|after|°|deg|\d))\s+((?:more|less|over|under|between)?\s*[-−.\d].*)$/i;

/** The two cells of a row, quoted or not; without any mark, the text on either side of the blank before the gap. */
export function cellsIn(row: string): string[] {
  if (/(^|[\t;,])\s*"/.test(row)) return partsOf(row);
  const text = row.replaceAll('"', '');
  const clear = ['\t', ';'].find((each) => text.includes(each));
  const [, angle, gap] = clear === undefined ? (DECIMAL_COMMA.exec(text) ?? []) : [];
  if (angle !== undefined && gap !== undefined) return [angle, gap];
  if (markOf(text) !== undefined) return partsOf(text);
  const found = BLANK.exec(text);
  return found === null ? [text] : [found[1] ?? '', found[2] ?? ''];
}
