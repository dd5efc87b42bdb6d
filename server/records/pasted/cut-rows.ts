/** A row of a text from a table, with the line on which it begins. */
export interface CutRow {
  readonly line: number;
  readonly cells: readonly string[];
}

export type CutRows =
  | { readonly ok: true; readonly rows: readonly CutRow[] }
  | { readonly ok: false; readonly line: number; readonly detail: string };

interface HowToCut {
  /** One sign. */
  readonly delimiter: string;
  readonly rowEnd: string;
  /** No row of such a table is longer: what is longer is cut up no further. */
  readonly longestRow: number;
  /** Left out, each row counts, the empty ones among them. */
  readonly skipsEmpty?: boolean;
  /**
   * As people type: spaces around a cell say nothing, and a quote mark is one of inches where it does not stand around a
   * cell. Left out, spaces are kept, and a quote mark in a cell wants quote marks around it (RFC 4180).
   */
  readonly asTyped?: boolean;
}

const QUOTE = '"';

/** A cell that was read, and where the text goes on behind it. */
interface Cell {
  readonly text: string;
  readonly next: number;
}

/** What stands between the quote mark at `open` and its fellow; nothing where it has none. */
function betweenQuotes(text: string, open: number): Cell | undefined {
  for (let at = open + 1; ; ) {
    const mark = text.indexOf(QUOTE, at);
    if (mark < 0) return undefined;
    if (text[mark + 1] !== QUOTE)
      return { text: text.slice(open + 1, mark).replaceAll('""', QUOTE), next: mark + 1 };
    at = mark + 2;
  }
}

/** One text, read cell by cell; each sign is looked at a few times at the most. */
class Cutter {
  readonly #text: string;
  readonly #how: HowToCut;
  constructor(text: string, how: HowToCut) {
    this.#text = text;
    this.#how = how;
  }

  #isEnd(at: number): boolean {
    const { delimiter, rowEnd } = this.#how;
    return at >= this.#text.length || this.#text[at] === delimiter || this.#text.startsWith(rowEnd, at);
  }

  /** Past spaces that say nothing. */
  #pastSpaces(from: number): number {
    let at = from;
    if (this.#how.asTyped !== true) return at;
    while (!this.#isEnd(at) && (this.#text[at] ?? '').trim() === '') at += 1;
    return at;
  }

  #plain(from: number): Cell | undefined {
    let at = from;
    while (!this.#isEnd(at)) at += 1;
    const text = this.#text.slice(from, at);
    if (this.#how.asTyped === true) return { text: text.trim(), next: at };
    return text.includes(QUOTE) ? undefined : { text, next: at };
  }

  /** The cell that begins there; nothing where its quote marks are none that can be read. */
  cell(from: number): Cell | undefined {
    const begins = this.#pastSpaces(from);
    if (this.#text[begins] !== QUOTE) return this.#plain(from);
    const within = betweenQuotes(this.#text, begins);
    if (within === undefined) return undefined;
    const next = this.#pastSpaces(within.next);
    if (this.#isEnd(next)) return { text: within.text, next };
    return this.#how.asTyped === true ? this.#plain(from) : undefined;
  }

  /** Whether another cell of the same row follows. */
  goesOn(at: number): boolean {
    return this.#text[at] === this.#how.delimiter;
  }
}

const QUOTES = 'has a quote mark that does not open or close a cell as it should';

function linesIn(text: string, from: number, to: number): number {
  let lines = 0;
  for (let at = text.indexOf('\n', from); at >= 0 && at < to; at = text.indexOf('\n', at + 1)) lines += 1;
  return lines;
}

/** Cuts a text from a table into rows, every cell as text; one that can't be cut is told by its line. */
export function cutRows(text: string, how: HowToCut): CutRows {
  const { longestRow, rowEnd, skipsEmpty } = how;
  const cutter = new Cutter(text, how);
  const rows: CutRow[] = [];
  let line = 1;
  for (let at = text.startsWith('\uFEFF') ? 1 : 0; at < text.length; ) {
    const begun = at;
    const cells: string[] = [];
    for (let isMore = true; isMore; ) {
      const cell = cutter.cell(at);
      if ((cell?.next ?? 0) - begun > longestRow)
        return { ok: false, line, detail: `is a row of more than ${longestRow} signs` };
      if (cell === undefined) return { ok: false, line, detail: QUOTES };
      cells.push(cell.text);
      isMore = cutter.goesOn(cell.next);
      at = isMore ? cell.next + 1 : cell.next;
    }
    if (skipsEmpty !== true || cells.some((cell) => cell.trim() !== '')) rows.push({ line, cells });
    line += rowEnd === '\r' ? 1 : linesIn(text, begun, at + rowEnd.length);
    at += rowEnd.length;
  }
  return { ok: true, rows };
}
