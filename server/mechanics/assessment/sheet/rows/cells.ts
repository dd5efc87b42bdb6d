import { defined } from '../../../../../shared/defined.ts';
import { GAP_KINDS, SHEET_KINDS } from '../../../../../shared/schemas/sheet.ts';
import { keysOf } from '../../../../../shared/schemas/words.ts';
import { toolAllowance } from '../../../kit/allowances.ts';
import type { Judgement } from '../../assessment.ts';
import { foundTwice, gapOf, WHICH_HOLDS } from '../../common/found-twice.ts';
import { lacksSaid } from '../../common/lack.ts';
import { figureOf, type LotFigure } from '../../common/lot.ts';
import { newestLash } from '../../common/newest-lash.ts';
import { placeOf } from '../../common/said.ts';
import type { Evidence, GapName, SheetEvidence, SheetKindName } from '../../evidence.ts';
import { gapJudgement, type JudgedGap, judgeGap } from '../../gaps/gap.ts';
import { countedOf, worstOf } from '../../gaps/worst.ts';
import { liftHalf, perTurnOf } from '../../ratio/read/dial.ts';
import type { SheetCellDetail } from './detail.ts';
import type { LiftLot, SheetRow } from './rows.ts';

/** Lash and preload are read with a feeler, or by turns that are no better. */
const FEELER = toolAllowance('feeler');

const idsOf = (readings: readonly SheetEvidence[]): string[] => readings.map(({ id }) => id);

const isGap = (kind: SheetKindName): kind is GapName => GAP_KINDS.some((gap) => gap === kind);
const isOfGap = (entry: SheetEvidence): entry is JudgedGap['entry'] => isGap(entry.kind);

/** Readings of the same that were found wrong by an answer, and taken again since, or that a set-up speaks against. */
const readAgainOf = (
  { sheet }: Evidence,
  row: SheetRow,
  kind: SheetKindName,
  { spring, leftOut = [] }: Partial<Pick<LiftLot, 'spring' | 'leftOut'>> = {},
): Pick<SheetCellDetail, 'readAgain'> => {
  const again = sheet.flatMap((each) =>
    each.readAgain === true &&
    each.kind === kind &&
    placeOf(each) === placeOf(row) &&
    (spring === undefined || each.spring === spring)
      ? [each.id]
      : [],
  );
  const ids = [...again, ...leftOut].sort();
  return ids.length === 0 ? {} : { readAgain: ids };
};

const cell = (
  kind: SheetKindName,
  readings: readonly SheetEvidence[],
  figure: LotFigure,
  half: number,
): SheetCellDetail => ({
  kind,
  title: SHEET_KINDS[kind],
  ...figure,
  half,
  entryIds: idsOf(readings),
});

/** A gap that was read, with what is told of it. */
export interface GapCell {
  readonly cell: SheetCellDetail;
  readonly judged: JudgedGap;
  /** Every reading of the gap, each judged by itself. */
  readonly each: readonly JudgedGap[];
  readonly judgement: Judgement;
}

/** The gaps of a row: of several readings of one gap the worst. */
export function gapCells(evidence: Evidence, row: SheetRow): GapCell[] {
  return GAP_KINDS.flatMap((kind) => {
    const entries = row.others.filter(isOfGap).filter((entry) => entry.kind === kind);
    const each = entries.map((entry) => judgeGap(entry, evidence));
    const judged = worstOf(each);
    if (judged === undefined) return [];
    const judgement = gapJudgement(judged, countedOf(each).length - 1);
    const { gap, word, lacks } = judged;
    return [
      {
        judged,
        each,
        judgement,
        cell: {
          kind,
          title: SHEET_KINDS[kind],
          ...gap,
          half: toolAllowance(judged.entry.tool),
          passes: entries.length,
          apart: [],
          lacks: lacksSaid(lacks),
          ...defined({ word }),
          judgementId: judgement.id,
          entryIds: idsOf(entries),
        },
      },
    ];
  });
}

/** Lash and preload: the lash log's newest line where there is one, else what the sheet has. */
function setCells(evidence: Evidence, row: SheetRow): SheetCellDetail[] {
  const kinds = ['lash', 'preload'] as const;
  return kinds.flatMap((kind) => {
    const newest = kind === 'lash' ? newestLash(evidence, row) : undefined;
    if (newest !== undefined) {
      const twice = foundTwice(evidence, row);
      const open = twice !== undefined && twice.holds === undefined;
      return [
        {
          kind,
          title: SHEET_KINDS[kind],
          ...(twice === undefined ? newest.gap : gapOf(twice)),
          half: FEELER,
          passes: 1,
          apart: [],
          lacks: open ? [WHICH_HOLDS] : [],
          entryIds: [twice?.holds?.id ?? newest.id],
        },
      ];
    }
    const readings = row.others.filter((each) => each.kind === kind);
    return readings.length === 0
      ? []
      : [cell(kind, readings, figureOf(readings, perTurnOf(evidence, readings)), FEELER)];
  });
}

/** Every figure of a row but its gaps, in the order of the sheet's columns. */
export function figureCells(evidence: Evidence, row: SheetRow): SheetCellDetail[] {
  return [
    ...(row.lobe === undefined
      ? []
      : [
          {
            ...cell('lobe-lift', row.lobes, row.lobe, liftHalf(evidence, row.lobes)),
            ...readAgainOf(evidence, row, 'lobe-lift'),
          },
        ]),
    ...row.lifts.map(({ spring, readings, figure, leftOut }) => ({
      ...cell('valve-lift', readings, figure, liftHalf(evidence, readings)),
      spring,
      ...readAgainOf(evidence, row, 'valve-lift', { spring, ...defined({ leftOut }) }),
    })),
    ...setCells(evidence, row),
  ];
}

const ORDER = keysOf(SHEET_KINDS);
export const inColumns = (cells: readonly SheetCellDetail[]): SheetCellDetail[] =>
  cells.toSorted((a, b) => ORDER.indexOf(a.kind) - ORDER.indexOf(b.kind));
