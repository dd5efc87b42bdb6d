import { defined } from '../../../shared/defined.ts';
import { GAP_KINDS, SHEET_KINDS } from '../../../shared/schemas/sheet.ts';
import type { Component } from '../../../views/parts/components.ts';
import type { TableCell } from '../../../views/parts/table.examples.ts';
import { lashWorstFirst, worstFirst } from '../../assessment/sheet/worst-first.ts';
import { type CallContext, valveName } from '../../call/context.ts';
import { listComponents } from '../../call/report-parts.ts';
import { lowOrHigh } from '../../mechanics/assessment/common/said.ts';
import type { SheetCellDetail } from '../../mechanics/assessment/sheet/rows/detail.ts';
import { tableComponent } from '../../web/components.ts';
import { cellOf, sayCell } from './sheet-text.ts';

function gapCell(cell: SheetCellDetail | undefined): TableCell {
  if (cell === undefined) return { text: '' };
  const why = cell.lacks.join('; ');
  return {
    text: sayCell(cell),
    ...defined({ verdict: cell.word }),
    ...(why === '' ? {} : { why }),
  };
}

/** The clearances that were read, each against its limit and the worst first, and what is told of them. */
export function gapsComponents({ assessment }: CallContext): Component[] {
  const { rows, sentences } = worstFirst(assessment);
  const kinds = GAP_KINDS.filter((kind) => rows.some((row) => cellOf(row, kind) !== undefined));
  if (kinds.length === 0) return [];
  return [
    ...listComponents('Gaps that were read, the worst first', sentences),
    tableComponent({
      caption: 'Gaps read, inches, the worst valve first',
      columns: [{ label: 'Valve' }, ...kinds.map((kind) => ({ label: SHEET_KINDS[kind], number: true }))],
      rows: rows.map((row) => ({
        cells: [valveName(row), ...kinds.map((kind) => gapCell(cellOf(row, kind)))],
      })),
      note: 'Between two gauges both stand, and no middle is made of them. The part maker’s figure goes before any default limit.',
    }),
  ];
}

/** Lash by valve, farthest from what the card asks for first, or from the middle of its side where it says nothing. */
export function lashComponents({ assessment, record }: CallContext): Component[] {
  const rows = lashWorstFirst(record, assessment);
  if (rows.length === 0) return [];
  return [
    tableComponent({
      caption: 'Lash, inches, the farthest off first',
      columns: [{ label: 'Valve' }, { label: 'Lash', number: true }, { label: 'Off', number: true }],
      rows: rows.map(({ row, cell, off, from }) => ({
        cells: [
          valveName(row),
          sayCell(cell),
          off === undefined
            ? ''
            : { text: lowOrHigh(off), why: from === 'card' ? 'against the card' : 'against its side' },
        ],
      })),
    }),
  ];
}
