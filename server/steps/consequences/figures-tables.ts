import { formatFigure, formatQuantity, formatRatioInterval } from '../../../shared/quantities/format.ts';
import { fromSi, type Unit } from '../../../shared/quantities/units.ts';
import type { Fact } from '../../../views/parts/facts.examples.ts';
import type { TableCell, TableData } from '../../../views/parts/table.examples.ts';
import { gapFigures, type SetUpConsequences } from '../../assessment/consequences/consequences.ts';
import type { FigureRow, GapRow } from '../../mechanics/consequences/types.ts';

/** Said at the head of the page and of the report, wherever a gap is short. */
export const STOP = 'a gap is short of its limit. Stop: do not run it so, and have a qualified shop look.';

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
export function figuresTable({ figures }: SetUpConsequences): TableData {
  return {
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
}

/** A length in inches, where the heading has the unit. */
const inches = (si: number): string => formatFigure(fromSi(si, 'in'), { places: 3 });

function verdictCell(row: GapRow): TableCell {
  if (row.verdict !== undefined) return { text: '', verdict: row.verdict };
  return { text: row.measure ? 'measure it' : 'not yet', why: row.measure ? '' : lacks(row.missing) };
}

/** Why gaps are no better than they are, each reason once with the gaps it is about. */
export function gapReasons({ gaps }: SetUpConsequences): string[] {
  const byReason = new Map<string, string[]>();
  for (const { title, because } of gaps)
    for (const reason of because) byReason.set(reason, [...(byReason.get(reason) ?? []), title]);
  return [...byReason].map(([reason, titles]) => `${titles.join(', ')}: ${reason}.`);
}

const marginText = ({ after, limit }: GapRow): string => {
  if (after?.value === undefined) return '';
  const margin = after.value - limit.value;
  return `, ${inches(Math.abs(margin))} ${margin < 0 ? 'under' : 'over'}`;
};

/** Each gap before and after, against its limit, measured or calculated. */
export function gapsTable({ gaps }: SetUpConsequences): TableData {
  return {
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
        row.before === undefined ? '' : { text: gapFigures(row.before), why: row.before.basis },
        row.after === undefined
          ? ''
          : { text: gapFigures(row.after), why: `${row.after.basis}${marginText(row)}` },
        inches(row.limit.value),
        verdictCell(row),
      ],
    })),
    note: 'The part maker’s figure goes before any default limit. Over and under: against the limit. A calculated gap is clear only when all of its interval is.',
  };
}

/** The ratios that are set side by side, before and after. */
export function ratioFacts({ input }: SetUpConsequences): Fact[] {
  const { before, after } = input;
  return [
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
  ];
}
