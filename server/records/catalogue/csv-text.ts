import { CsvError, parse } from 'csv-parse/sync';
import { stringify } from 'csv-stringify/sync';
import { memberOf } from '../../../shared/member.ts';

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
  const head = text.split(/\r?\n/, 1)[0] ?? '';
  const count = (mark: string) => head.split(mark).length;
  return [',', ';', '\t'].toSorted((a, b) => count(b) - count(a))[0] ?? ',';
}

type CsvReading =
  | { readonly ok: true; readonly rows: readonly (readonly string[])[] }
  | { readonly ok: false; readonly line: number; readonly detail: string };

/** The rows of a file, every cell as text; a file that can't be cut into rows is told by its line. */
export function readCsv(text: string): CsvReading {
  try {
    const rows: string[][] = parse(text, {
      bom: true,
      delimiter: delimiterOf(text),
      relax_column_count: true,
      skip_empty_lines: false,
    });
    return { ok: true, rows };
  } catch (error) {
    if (!(error instanceof CsvError)) throw error;
    const lines = memberOf(error, 'lines');
    return {
      ok: false,
      line: typeof lines === 'number' ? lines : 1,
      detail: 'has a quote mark that does not open or close a cell as it should',
    };
  }
}
