import { CsvError, parse } from 'csv-parse/sync';
import { memberOf } from '../../../shared/member.ts';

/** A row of a text from a table, with the line on which it ends. */
export interface CutRow {
  readonly line: number;
  readonly cells: readonly string[];
}

export type CutRows =
  | { readonly ok: true; readonly rows: readonly CutRow[] }
  | { readonly ok: false; readonly line: number; readonly detail: string };

interface HowToCut {
  readonly delimiter: string;
  /** No row of such a table is longer: what is longer is cut up no further. */
  readonly longestRow: number;
  /** Left out, each row counts, the empty ones among them. */
  readonly skipsEmpty?: boolean;
  /** Left out, cells are kept with the spaces around them, and a quote mark stands at the ends of a cell alone. */
  readonly asTyped?: boolean;
}

function whyNot(error: CsvError, longestRow: number): string {
  return error.code === 'CSV_MAX_RECORD_SIZE'
    ? `is a row of more than ${longestRow} signs`
    : 'has a quote mark that does not open or close a cell as it should';
}

/** Cuts a text from a table into rows, every cell as text; one that can't be cut is told by its line. */
export function cutRows(text: string, { delimiter, longestRow, skipsEmpty, asTyped }: HowToCut): CutRows {
  const rows: CutRow[] = [];
  try {
    parse(text, {
      bom: true,
      delimiter,
      max_record_size: longestRow,
      relax_column_count: true,
      skip_empty_lines: skipsEmpty === true,
      skip_records_with_empty_values: skipsEmpty === true,
      relax_quotes: asTyped === true,
      trim: asTyped === true,
      on_record: (cells, { lines }) => {
        rows.push({ line: lines, cells });
        return undefined;
      },
    });
    return { ok: true, rows };
  } catch (error) {
    if (!(error instanceof CsvError)) throw error;
    const lines = memberOf(error, 'lines');
    return { ok: false, line: typeof lines === 'number' ? lines : 1, detail: whyNot(error, longestRow) };
  }
}
