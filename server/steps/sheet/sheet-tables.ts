import { GAP_KINDS, SHEET_KINDS } from '../../../shared/schemas/sheet.ts';
import type { Component } from '../../../views/parts/part.ts';
import type { TableCell, TableData } from '../../../views/parts/table.examples.ts';
import type { OnSpring, Sheet } from '../../assessment/sheet/sheet.ts';
import { cellFor, type SheetCell, type ValveRow } from '../../assessment/sheet/valve-rows.ts';
import { allowance } from '../../mechanics/kit/allowances.ts';
import { ON_SPRING, RATIO_ON, sayCell, sayPasses, sayRatio } from './sheet-text.ts';

const nameOf = (row: ValveRow): string => `${row.cylinder} ${row.valve}`;

function figureCell(cell: SheetCell | undefined, base: string): TableCell {
  if (cell === undefined) return { text: '' };
  const passes = sayPasses(cell);
  const apart = cell.spread !== undefined && cell.spread > allowance('repeat') + 1e-12;
  const why = [passes, ...(apart ? ['passes differ by more than .002: read again'] : [])].filter(
    (text) => text !== '',
  );
  const newest = cell.readings.at(-1);
  return {
    text: sayCell(cell),
    ...(newest === undefined ? {} : { href: `${base}/sheet/readings/${newest.id}` }),
    ...(why.length === 0 ? {} : { why: why.join('; ') }),
  };
}

const oddOf = (on: OnSpring, row: ValveRow) =>
  on.sides
    .flatMap((side) => side.odd)
    .find((odd) => odd.cylinder === row.cylinder && odd.valve === row.valve);

/** Every valve with its lifts on one spring. */
export function liftsTable(sheet: Sheet, on: OnSpring, base: string): Component {
  const names = new Map(sheet.arms.map((arm) => [arm.id, arm.name]));
  const extra = (['lash', 'preload'] as const).filter((kind) =>
    sheet.rows.some((row) => cellFor(row, kind) !== undefined),
  );
  const data: TableData = {
    caption: `Every valve, ${ON_SPRING[on.spring]}, inches`,
    columns: [
      { label: 'Valve' },
      { label: 'Arm on it' },
      { label: 'Lobe lift', number: true },
      { label: 'Valve lift', number: true },
      { label: RATIO_ON[on.spring], number: true },
      ...extra.map((kind) => ({ label: SHEET_KINDS[kind], number: true })),
    ],
    rows: sheet.rows.map((row) => ({
      ...(oddOf(on, row) === undefined ? {} : { odd: true }),
      cells: [
        nameOf(row),
        row.armId === undefined ? '' : (names.get(row.armId) ?? ''),
        figureCell(cellFor(row, 'lobe-lift'), base),
        figureCell(cellFor(row, 'valve-lift', on.spring), base),
        sayRatio(on.ratios.get(nameOf(row)) ?? {}),
        ...extra.map((kind) => figureCell(cellFor(row, kind), base)),
      ],
    })),
    note: 'Intakes are set against intakes, exhausts against exhausts. Odd: over .008 from the median of the siblings (common practice, no published source).',
  };
  return { template: '/parts/table', data };
}

/** The clearances that were read, each against its limit. */
export function gapsOnSheet(sheet: Sheet): Component[] {
  const kinds = GAP_KINDS.filter((kind) => sheet.rows.some((row) => cellFor(row, kind) !== undefined));
  if (kinds.length === 0) return [];
  const rows = sheet.rows.filter((row) => kinds.some((kind) => cellFor(row, kind) !== undefined));
  const data: TableData = {
    caption: 'Gaps read, inches',
    columns: [{ label: 'Valve' }, ...kinds.map((kind) => ({ label: SHEET_KINDS[kind], number: true }))],
    rows: rows.map((row) => ({
      cells: [nameOf(row), ...kinds.map((kind) => gapCell(cellFor(row, kind)))],
    })),
    note: 'Between two gauges both stand, and no middle is made of them. The part maker’s figure goes before any default limit.',
  };
  return [{ template: '/parts/table', data }];
}

function gapCell(cell: SheetCell | undefined): TableCell {
  if (cell === undefined) return { text: '' };
  const why = cell.because.join('; ');
  return {
    text: sayCell(cell),
    ...(cell.verdict === undefined ? {} : { verdict: cell.verdict }),
    ...(why === '' ? {} : { why }),
  };
}

/** As many as a person would look back over; every figure above leads to its own reading. */
const NEWEST = 10;

/** The newest readings, each with the way to put it right. */
export function readingsTable(sheet: Sheet, base: string): Component[] {
  if (sheet.readings.length === 0) return [];
  const data: TableData = {
    caption: 'Newest readings of the sheet',
    columns: [{ label: 'Valve' }, { label: 'What' }, { label: 'Reading', number: true }, { label: 'Who' }],
    rows: sheet.readings
      .toReversed()
      .slice(0, NEWEST)
      .map((each) => ({
        cells: [
          `${each.cylinder} ${each.valve}`,
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
  };
  return [{ template: '/parts/table', data }];
}
