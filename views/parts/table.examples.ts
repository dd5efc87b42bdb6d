import type { PossibleReadings } from './field.examples.ts';
import type { Part } from './part.ts';
import { HOSTILE, LONG } from './part.ts';
import type { VerdictData } from './verdict.examples.ts';

/** An entry that is typed into a cell of a table; its column and row name it. */
export interface CellInput {
  readonly id: string;
  readonly name: string;
  /** What it is, for whoever does not see the columns: `Valve lift, 5 intake`. */
  readonly label: string;
  readonly value?: string;
  readonly reads?: string;
  readonly unit?: string;
  readonly perTurn?: string;
  readonly canBe?: string;
  readonly error?: string;
  readonly asks?: PossibleReadings;
  readonly autofocus?: boolean;
}

export interface TableCell {
  readonly text: string;
  readonly verdict?: VerdictData['word'];
  /** A stop stands: with its mark and hatch. */
  readonly stopped?: boolean;
  readonly href?: string;
  /** A second, smaller line: where the figure is from, or what is odd about it. */
  readonly why?: string;
  /** What is asked of the figure, with the way to where it is answered. */
  readonly asks?: readonly { readonly text: string; readonly href?: string }[];
  readonly input?: CellInput;
}

export interface TableData {
  readonly caption: string;
  readonly columns: readonly { readonly label: string; readonly number?: boolean }[];
  readonly rows: readonly { readonly cells: readonly (string | TableCell)[]; readonly odd?: boolean }[];
  readonly note?: string;
  /** Too narrow for columns, the figures of a row stand side by side under their names, and its verdict beside its own name. */
  readonly compact?: boolean;
  /** Said in place of rows when there are none. */
  readonly empty?: string;
}

export const table: Part<'/parts/table'> = {
  name: 'table',
  title: 'Table',
  purpose: 'Figures in columns, digits under digits. Too narrow for columns, each row becomes a small card.',
  template: '/parts/table',
  examples: [
    {
      title: 'Before and after, side by side on a phone',
      data: {
        caption: 'Gaps, before and after, inches',
        compact: true,
        columns: [
          { label: 'Gap' },
          { label: 'Before', number: true },
          { label: 'After', number: true },
          { label: 'Limit', number: true },
          { label: 'Verdict' },
        ],
        rows: [
          {
            cells: [
              'Piston to valve',
              { text: '.117 ± .023', why: 'calculated' },
              { text: '.103 (.072 to .126)', why: 'calculated, .023 over' },
              '.080',
              { text: '', verdict: 'close' },
            ],
          },
          { cells: ['Anything to the cover', '', '', '.060', { text: 'not known', why: 'lacks a gap' }] },
        ],
      },
    },
    {
      title: 'Per valve, one odd',
      data: {
        caption: 'Valve lift and ratio, light spring',
        columns: [
          { label: 'Valve' },
          { label: 'Lobe lift, in', number: true },
          { label: 'Valve lift, in', number: true },
          { label: 'Ratio', number: true },
        ],
        rows: [
          { cells: ['1 intake', '.324', '.566', '1.747'] },
          { cells: ['1 exhaust', '.331', '.578', '1.746'] },
          {
            odd: true,
            cells: [
              '5 intake',
              '.324',
              '.547',
              { text: '1.688', verdict: 'differs', why: 'The rocker is the odd one.' },
            ],
          },
          { cells: ['5 exhaust', '.331', '−.004', { text: '1.749', verdict: 'agrees' }] },
        ],
        note: 'Three passes each. Invented figures.',
      },
    },
    {
      title: 'Typed into',
      data: {
        caption: 'Every valve, light spring, inches',
        columns: [
          { label: 'Valve' },
          { label: 'Lobe lift', number: true },
          { label: 'Valve lift', number: true },
        ],
        rows: [
          {
            cells: [
              '1 intake',
              '.324',
              { text: '.566', input: { id: 'cell-1', name: 'cell-1', label: 'Valve lift, 1 intake' } },
            ],
          },
          {
            cells: [
              '2 intake',
              '.324',
              {
                text: '.466',
                asks: [{ text: 'Could one turn of the dial be missing?', href: '#question' }],
                input: {
                  id: 'cell-2',
                  name: 'cell-2',
                  label: 'Valve lift, 2 intake',
                  value: 'five',
                  error: 'five is no length; write it like .566',
                },
              },
            ],
          },
        ],
      },
    },
    {
      title: 'Many columns',
      data: {
        caption: 'Gaps before and after',
        columns: [
          { label: 'Gap' },
          { label: 'Limit, in', number: true },
          { label: 'Before, in', number: true },
          { label: 'After, in', number: true },
          { label: 'How' },
          { label: 'Verdict' },
        ],
        rows: [
          { cells: ['Coil bind', '.060', '.074', '.041', 'calculated', { text: '', verdict: 'short' }] },
          {
            cells: ['Retainer to seal', '.050', '.083', '.050', 'calculated', { text: '', verdict: 'close' }],
          },
          { cells: ['Slot to stud', '.030', '.044', '.038', 'measured', { text: '', verdict: 'clear' }] },
        ],
      },
    },
    {
      title: 'Empty',
      data: {
        caption: 'Readings of this lot',
        columns: [{ label: 'Lot' }, { label: 'Ratio', number: true }],
        rows: [],
        empty: 'No reading of this lot yet.',
      },
    },
    {
      title: 'Long text',
      data: {
        caption: LONG,
        columns: [{ label: 'Place' }, { label: 'Words' }],
        rows: [{ cells: ['5 intake', { text: LONG, why: LONG }] }],
      },
    },
    {
      title: 'Hostile text',
      data: {
        caption: HOSTILE,
        columns: [{ label: HOSTILE }, { label: HOSTILE }],
        rows: [{ cells: [HOSTILE, { text: HOSTILE, why: HOSTILE, href: '#"onclick="x' }] }],
        note: HOSTILE,
      },
    },
  ],
};
