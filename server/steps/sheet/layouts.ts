import type { Component } from '../../../views/parts/components.ts';
import { foldComponent } from '../../call/fold.ts';

/** What the page of the sheet is made of. */
export interface Parts {
  readonly said: readonly Component[];
  /** The question that is asked now, and the others a tap away. */
  readonly asked: readonly Component[];
  /** Every valve as a table that is typed into; left out while nothing says how many there are. */
  readonly grid: Component | undefined;
  /** Asks how many cylinders there are, where the table waits for that. */
  readonly cylinders: readonly Component[];
  readonly entry: Component;
  /** The rows to paste, until they were looked at; then what was seen in them stands first. */
  readonly pasting: Component | undefined;
  readonly looked: readonly Component[];
  readonly figures: readonly Component[];
  readonly readings: readonly Component[];
}

const pastingFold = ({ pasting }: Parts, { paste }: { readonly paste: boolean }): Component[] =>
  pasting === undefined ? [] : [foldComponent('paste-rows', 'Paste rows of a spreadsheet', [pasting], paste)];

const readingsFold = ({ readings }: Parts): Component[] =>
  readings.length === 0 ? [] : [foldComponent('sheet-readings', 'Newest readings, to put right', readings)];

/** At the desk the sheet is one grid: what it says, the grid with its questions, and the rest. */
export const deskLayout = (
  parts: Parts,
  faulty: { readonly one: boolean; readonly paste: boolean },
): Component[] => [
  ...parts.looked,
  ...parts.said,
  ...parts.asked,
  ...(parts.grid === undefined ? [...parts.cylinders, parts.entry] : [parts.grid]),
  ...parts.figures,
  ...(parts.grid === undefined
    ? []
    : [
        foldComponent(
          'one-valve',
          'One valve with its gaps, or read with another arm',
          [parts.entry],
          faulty.one,
        ),
      ]),
  ...pastingFold(parts, faulty),
  ...readingsFold(parts),
];

/** At the bench the next valve comes before the figures, and a spreadsheet is seldom at hand. */
export const benchLayout = (parts: Parts, faulty: { readonly paste: boolean }): Component[] => [
  ...parts.looked,
  ...parts.said,
  parts.entry,
  ...parts.asked,
  ...parts.figures,
  ...pastingFold(parts, faulty),
  ...readingsFold(parts),
];
