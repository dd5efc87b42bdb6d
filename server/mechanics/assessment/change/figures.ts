import { defined } from '../../../../shared/defined.ts';
import { figureRows } from '../../consequences/figure-rows.ts';
import type { ConsequenceInput, FigureRow } from '../../consequences/types.ts';
import { IN } from '../../kit/si.ts';
import type { AssessedQuantity, Subject } from '../assessment.ts';
import { lacksSaid } from '../common/lack.ts';
import { keyOf } from '../common/said.ts';
import type { ChangeFigure, ChangeRatio } from './detail.ts';
import { spreadOf, UNBENT, type Variants, variantsOf } from './spread.ts';

/** No length on an engine is known nearer than half a thousandth, however it was calculated. */
const FINEST = 0.0005 * IN;
const least = (halfWidth: number, dimension: FigureRow['dimension']): number =>
  dimension === 'length' ? Math.max(halfWidth, FINEST) : halfWidth;

/** The same figures with each end of the ratio before, and of the one after. */
interface RowEnds {
  readonly before: readonly FigureRow[];
  readonly after: readonly FigureRow[];
}

function figureOf(row: FigureRow, ends: RowEnds, about: Subject, ofPlan: string): ChangeFigure {
  const { name, title, dimension, before, after, halfWidth = 0, missing } = row;
  const at = (rows: readonly FigureRow[]) =>
    rows.filter((each) => each.name === name).map((each) => each.after);
  const spread =
    after === undefined
      ? undefined
      : spreadOf(
          after,
          { before: at(ends.before), after: at(ends.after) },
          { under: halfWidth, over: halfWidth },
        );
  return {
    name,
    title,
    dimension,
    ...defined({ before }),
    ...(after === undefined || spread === undefined
      ? {}
      : {
          after: {
            value: after,
            low: after - least(spread.under, dimension),
            high: after + least(spread.over, dimension),
          },
        }),
    lacks: missing,
    quantityId: `change:${name}:${keyOf(about)}${ofPlan}`,
  };
}

/** The figures that have no limit of their own; each end of the two ratios is calculated by itself. */
export function figuresOf(variants: Variants, about: Subject, ofPlan: string): ChangeFigure[] {
  const ends = { before: variants.before.flatMap(figureRows), after: variants.after.flatMap(figureRows) };
  return figureRows(variants.middle).map((row) => figureOf(row, ends, about, ofPlan));
}

/** What the springs open at with one ratio. */
export const openLoadWith = (
  known: Omit<ConsequenceInput, 'before' | 'after'>,
  after: ChangeRatio,
  about: Subject,
): ChangeFigure['after'] =>
  figuresOf(variantsOf(known, { after }, UNBENT), about, '').find(({ name }) => name === 'open-load')?.after;

/** What a figure after the change holds for. */
function conditionsOf(ratio: ChangeRatio, lash: number | undefined): string[] {
  return [
    `with ${ratio.said}`,
    ...(ratio.spring === undefined ? [] : [`${ratio.spring} spring`]),
    ratio.lashIn
      ? 'the lift as it was read, lash in it'
      : lash === undefined
        ? 'no lash taken off, since none is known'
        : 'less the lash',
  ];
}

/** The figures after, as quantities. */
export function figureQuantities(
  figures: readonly ChangeFigure[],
  about: Subject,
  ratio: ChangeRatio | undefined,
  lash: number | undefined,
): AssessedQuantity[] {
  if (ratio === undefined) return [];
  return figures.map(({ quantityId, title, dimension, after, lacks }) => ({
    id: quantityId,
    name: title,
    about,
    dimension,
    ...(after === undefined ? {} : after),
    basis: ratio.basis === 'measured' ? 'calculated' : ratio.basis,
    conditions: conditionsOf(ratio, lash),
    lacks: [...lacks, ...lacksSaid(ratio.lacks)],
    restsOn: ratio.restsOn,
  }));
}
