import { stringify } from 'csv-stringify/sync';
import { type CutRows, cutRows } from '../pasted/cut-rows.ts';

/** What a spreadsheet would run as a formula when a cell begins with it (tab and carriage return too). */
const RUNS = /^'*[=+\-@\t\r]/;
const GUARDED = /^'+[=+\-@\t\r]/;

/** A text as it goes into a file: a quote mark before what a spreadsheet would run. */
export const guarded = (text: string): string => (RUNS.test(text) ? `'${text}` : text);
/** The text again, with the guard taken off. */
export const unguarded = (text: string): string => (GUARDED.test(text) ? text.slice(1) : text);

/** Rows as a file after RFC 4180: commas, CRLF, quotes where they are needed; UTF-8 without a mark. */
export function writeCsv(rows: readonly (readonly string[])[]): string {
  return stringify(
    rows.map((row) => [...row]),
    { record_delimiter: '\r\n' },
  );
}

/** Commas by the standard; a sheet copied from the screen has tabs, and some countries' files have semicolons. */
function delimiterOf(text: string): string {
  const head = text.slice(0, LONGEST_ROW).split(/\r?\n/, 1)[0] ?? '';
  const count = (mark: string) => head.split(mark).length;
  return [',', ';', '\t'].toSorted((a, b) => count(b) - count(a))[0] ?? ',';
}

/** Rows end as the first does: what else would end one stands in a cell. */
const rowEndOf = (text: string): string => /\r\n|\n|\r/.exec(text)?.[0] ?? '\n';

/** Many times a family with the longest notes. */
const LONGEST_ROW = 20_000;

/** The rows of a file, every cell as text; a file that can't be cut into rows is told by its line. */
export const readCsv = (text: string): CutRows =>
  cutRows(text, { delimiter: delimiterOf(text), rowEnd: rowEndOf(text), longestRow: LONGEST_ROW });
