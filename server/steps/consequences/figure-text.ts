import { formatRatio, ratioFigures } from '../../../shared/quantities/format.ts';
import { withoutUnit } from '../../call/takeover-items.ts';
import type { ChangeFigure, ChangeRatio } from '../../mechanics/assessment/change/detail.ts';
import { type GapBounds, gapSaid } from '../../mechanics/assessment/common/gap-said.ts';
import { inches, loadSaid, nominalSaid } from '../../mechanics/assessment/common/said.ts';

/** `.041 ± .006`, where the heading has the unit. */
export const gapText = (gap: GapBounds): string => withoutUnit(gapSaid(gap));

const bare = (load: number): string => withoutUnit(loadSaid(load));

/** A figure before: no finer than a gauge on an engine, or a spring's own tolerance. */
export const figureText = ({ dimension }: ChangeFigure, si: number | undefined): string =>
  si === undefined ? '' : dimension === 'length' ? inches(si) : loadSaid(si);

/** The interval of a figure after, under it: `.559 to .561`. */
export function intervalText({ dimension, after }: ChangeFigure): string {
  if (after === undefined) return '';
  if (dimension === 'load') return `${bare(after.low)} to ${loadSaid(after.high)}`;
  return `${withoutUnit(inches(after.low))} to ${inches(after.high)}`;
}

/** `1.600`, with its interval: a measured one by its uncertainty, any other as it is sold or stated. */
export function ratioText({ from, value, low, high }: ChangeRatio): { value: string; note: string } {
  if (from !== 'measured')
    return { value: nominalSaid(value), note: `${formatRatio(low, 2)} to ${formatRatio(high, 2)}` };
  const figures = ratioFigures(value, Math.max(high - value, value - low));
  const places = figures.value.split('.')[1]?.length ?? 0;
  return { value: figures.value, note: `${formatRatio(low, places)} to ${formatRatio(high, places)}` };
}
