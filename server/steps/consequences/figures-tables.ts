import { formatQuantity, formatRatioInterval } from '../../../shared/quantities/format.ts';
import { fromSi, type Unit } from '../../../shared/quantities/units.ts';
import type { Component } from '../../../views/parts/part.ts';
import type { TableCell, TableData } from '../../../views/parts/table.examples.ts';
import { type SetUpConsequences, sayGap } from '../../assessment/consequences/consequences.ts';
import type { FigureRow, GapRow } from '../../mechanics/consequences/types.ts';

const UNIT: Readonly<Record<FigureRow['dimension'], Unit>> = { length: 'in', load: 'lbf' };
const PLACES: Readonly<Record<FigureRow['dimension'], number>> = { length: 4, load: 0 };

const written = (row: FigureRow, si: number | undefined): string =>
  si === undefined ? '' : formatQuantity(fromSi(si, UNIT[row.dimension]), { places: PLACES[row.dimension] });

function afterCell(row: FigureRow): TableCell {
  const half = row.halfWidth === undefined ? '' : written(row, row.halfWidth);
  return {
    text: written(row, row.after),
    ...(row.after === undefined || half === '' ? {} : { why: `± ${half}` }),
  };
}

const lacks = (missing: readonly string[]): string =>
  missing.length === 0 ? '' : `lacks ${missing.join(', ')}`;

/** Lift, loads and sweep before and after. */
export function figuresTable({ figures }: SetUpConsequences): Component {
  const data: TableData = {
    caption: 'Lift, loads and sweep, before and after',
    columns: [
      { label: 'What' },
      { label: 'Before, card’s ratio', number: true },
      { label: 'After, measured', number: true },
      { label: 'Still lacks' },
    ],
    rows: figures.map((row) => ({
      cells: [row.title, written(row, row.before), afterCell(row), lacks(row.missing)],
    })),
  };
  return { template: '/parts/table', data };
}

const limitText = (row: GapRow): string => formatQuantity(fromSi(row.limit.value, 'in'), { places: 3 });

function verdictCell(row: GapRow): TableCell {
  if (row.verdict !== undefined) return { text: '', verdict: row.verdict };
  return { text: row.measure ? 'measure it' : 'not yet', why: row.measure ? '' : lacks(row.missing) };
}

const bare = (text: string): string => text.replace(/ in\b/g, '');

/** Why gaps are no better than they are, each reason once with the gaps it is about. */
export function reasonsList({ gaps }: SetUpConsequences): Component[] {
  const byReason = new Map<string, string[]>();
  for (const { title, because } of gaps)
    for (const reason of because) byReason.set(reason, [...(byReason.get(reason) ?? []), title]);
  if (byReason.size === 0) return [];
  const items = [...byReason].map(([reason, titles]) => `${titles.join(', ')}: ${reason}.`);
  return [{ template: '/pages/call/list', data: { title: 'Why not clear', items } }];
}

const marginText = ({ after, limit }: GapRow): string => {
  if (after?.value === undefined) return '';
  const margin = fromSi(after.value - limit.value, 'in').value;
  const size = formatQuantity({ value: Math.abs(margin), unit: 'in' }, { places: 3 });
  return `, ${bare(size)} ${margin < 0 ? 'under' : 'over'}`;
};

/** Each gap before and after, against its limit, measured or calculated. */
export function gapsTable({ gaps }: SetUpConsequences): Component {
  const data: TableData = {
    caption: 'Gaps, before and after, inches',
    columns: [
      { label: 'Gap' },
      { label: 'Before', number: true },
      { label: 'After', number: true },
      { label: 'Limit', number: true },
      { label: 'Verdict' },
    ],
    rows: gaps.map((row) => ({
      cells: [
        row.title,
        row.before === undefined ? '' : { text: bare(sayGap(row.before)), why: row.before.basis },
        row.after === undefined
          ? ''
          : { text: bare(sayGap(row.after)), why: `${row.after.basis}${marginText(row)}` },
        bare(limitText(row)),
        verdictCell(row),
      ],
    })),
    note: 'The part maker’s figure goes before any default limit. Over and under: against the limit. A calculated gap is clear only when all of its interval is.',
  };
  return { template: '/parts/table', data };
}

/** The two ratios the page sets side by side. */
export function ratiosFacts({ input, found }: SetUpConsequences): Component {
  const { before, after } = input;
  return {
    template: '/parts/facts',
    data: {
      block: true,
      items: [
        { label: 'Valve', value: `${found.setUp.cylinder} ${found.setUp.valve}` },
        {
          label: 'Before, ratio the card assumes',
          value: before === undefined ? 'not known' : formatRatioInterval(before.value, before.halfWidth),
          note: 'stated, not measured',
        },
        {
          label: after?.spring === 'running' ? 'After, running-spring ratio' : 'After, light-spring ratio',
          value: after === undefined ? 'not measured yet' : formatRatioInterval(after.value, after.halfWidth),
          note: '95 % interval',
        },
        { label: 'Build revision', value: String(found.setUp.revision) },
      ],
    },
  };
}
