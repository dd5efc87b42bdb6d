import { defined } from '../../../shared/defined.ts';
import { GAP_KINDS, SHEET_KINDS } from '../../../shared/schemas/sheet.ts';
import type { Component } from '../../../views/parts/components.ts';
import type { TableCell } from '../../../views/parts/table.examples.ts';
import { gapJudgements } from '../../assessment/sheet/of-sheet.ts';
import { type CallContext, valveName } from '../../call/context.ts';
import { listComponents } from '../../call/report-parts.ts';
import { bareInches } from '../../mechanics/assessment/common/said.ts';
import type {
  SheetCellDetail,
  SheetRowDetail,
  SheetSwapDetail,
} from '../../mechanics/assessment/sheet/detail.ts';
import { allowance } from '../../mechanics/kit/allowances.ts';
import { tableComponent } from '../../web/components.ts';
import { cellOf, ON_SPRING, sayCell } from './sheet-text.ts';

function gapCell(cell: SheetCellDetail | undefined): TableCell {
  if (cell === undefined) return { text: '' };
  const why = cell.lacks.join('; ');
  return {
    text: sayCell(cell),
    ...defined({ verdict: cell.word }),
    ...(why === '' ? {} : { why }),
  };
}

/** The clearances that were read, each against its limit, and what is told of them. */
export function gapsComponents({ assessment }: CallContext, all: readonly SheetRowDetail[]): Component[] {
  const kinds = GAP_KINDS.filter((kind) => all.some((row) => cellOf(row, kind) !== undefined));
  if (kinds.length === 0) return [];
  const rows = all.filter((row) => kinds.some((kind) => cellOf(row, kind) !== undefined));
  return [
    ...listComponents(
      'Gaps that were read',
      gapJudgements(assessment).map(({ sentence }) => sentence),
    ),
    tableComponent({
      caption: 'Gaps read, inches',
      columns: [{ label: 'Valve' }, ...kinds.map((kind) => ({ label: SHEET_KINDS[kind], number: true }))],
      rows: rows.map((row) => ({
        cells: [valveName(row), ...kinds.map((kind) => gapCell(cellOf(row, kind)))],
      })),
      note: 'Between two gauges both stand, and no middle is made of them. The part maker’s figure goes before any default limit.',
    }),
  ];
}

/** `+.035 in` */
export const signed = (si: number): string => `${si > 0 ? '+' : ''}${bareInches(si)} in`;

/** What the swaps on record decide, each in the sentence of its judgement. */
export function swapsComponents({ assessment }: CallContext): Component[] {
  const { swaps } = assessment.details.sheet;
  const told = ({ judgementId }: SheetSwapDetail) =>
    assessment.judgements.find(({ id }) => id === judgementId)?.sentence ?? '';
  if (swaps.length === 0) return [];
  return [
    tableComponent({
      caption: 'Swap tests',
      columns: [
        { label: 'Valves' },
        { label: 'Goes with the arm', number: true },
        { label: 'Stays on the valve', number: true },
        { label: 'What it decides' },
      ],
      rows: swaps.map((swap) => ({
        cells: [
          `${swap.places.join(' and ')}, ${ON_SPRING[swap.spring]}`,
          swap.part === undefined ? '' : signed(swap.part),
          swap.position === undefined ? '' : signed(swap.position),
          told(swap),
        ],
      })),
      note: `A difference counts past ${bareInches(allowance('odd-beyond'))} in. Both arms on both valves, read the same way.`,
    }),
  ];
}

/** As many as a person would look back over; every figure above leads to its own reading. */
const NEWEST = 10;

/** The newest readings, each with the way to put it right. */
export function readingsComponents({ record, base }: CallContext): Component[] {
  if (record.sheetReadings.length === 0) return [];
  return [
    tableComponent({
      caption: 'Newest readings of the sheet',
      columns: [{ label: 'Valve' }, { label: 'What' }, { label: 'Reading', number: true }, { label: 'Who' }],
      rows: record.sheetReadings
        .toReversed()
        .slice(0, NEWEST)
        .map((each) => ({
          cells: [
            valveName(each),
            `${SHEET_KINDS[each.kind]}${each.arms === 'before' ? ', arms before' : ''}`,
            each.replacedBy === undefined && !each.struck
              ? { text: each.reading.readAs, href: `${base}/sheet/readings/${each.id}` }
              : {
                  text: `${each.struck ? 'struck: ' : 'replaced: '}${each.reading.readAs}`,
                  ...(each.reason === '' ? {} : { why: each.reason }),
                },
            each.by,
          ],
        })),
    }),
  ];
}
