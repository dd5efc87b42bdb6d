import type { DialData } from '../../views/parts/dial.examples.ts';

/** What a step puts on the blank sheet for the bench. */
export interface WorksheetRows {
  /** How something is done, as boxes to tick. */
  readonly choices: readonly { readonly label: string; readonly boxes: readonly string[] }[];
  /** Lines to fill in. */
  readonly blanks: readonly string[];
  /** Rows for readings. */
  readonly passes: readonly string[];
  /** Rows for valves. */
  readonly valves: readonly string[];
  readonly dials: readonly DialData[];
}

export const NO_ROWS: WorksheetRows = { choices: [], blanks: [], passes: [], valves: [], dials: [] };
