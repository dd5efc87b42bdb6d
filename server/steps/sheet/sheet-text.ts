import { formatNumber } from '../../../shared/quantities/format.ts';
import { bareInches, ratioSaid } from '../../mechanics/assessment/common/said.ts';
import type { SheetKindName, Spring } from '../../mechanics/assessment/evidence.ts';
import type {
  SheetCellDetail,
  SheetRatioDetail,
  SheetRowDetail,
} from '../../mechanics/assessment/sheet/rows/detail.ts';

export const cellOf = (
  { cells }: SheetRowDetail,
  kind: SheetKindName,
  spring?: Spring,
): SheetCellDetail | undefined =>
  cells.find((cell) => cell.kind === kind && (spring === undefined || cell.spring === spring));

type Ends = { readonly value?: number; readonly low?: number; readonly high?: number };

/** The best value where there is one, else what it lies between, over or under. */
function said({ value, low, high }: Ends, figure: (si: number) => string): string {
  if (value !== undefined) return figure(value);
  if (low !== undefined && high !== undefined) return `${figure(low)} to ${figure(high)}`;
  if (low !== undefined) return `over ${figure(low)}`;
  return high === undefined ? '' : `under ${figure(high)}`;
}

/** `.560`, or the gauges it lies between: `.024 to .028`, `over .040`. */
export const sayCell = (cell: Ends): string => said(cell, bareInches);

/** `1.600 ± .011`, or what it lies between. */
export function sayRatio(ratio: Pick<SheetRatioDetail, 'value' | 'low' | 'high'>): string {
  const { value, high } = ratio;
  const figure = said(ratio, ratioSaid);
  return value === undefined || high === undefined
    ? figure
    : `${figure}\u00a0±\u00a0${formatNumber(high - value, 3)}`;
}

/** What is below a figure: its passes and their spread. */
export function sayPasses({ passes, spread }: Pick<SheetCellDetail, 'passes' | 'spread'>): string {
  if (passes < 2) return '';
  return spread === undefined ? `${passes} readings` : `${passes} passes, spread ${bareInches(spread)}`;
}

/** Names of the lifts and ratios by the spring they were read on. */
export const ON_SPRING: Readonly<Record<Spring, string>> = {
  light: 'light spring',
  running: 'running spring',
  'not-said': 'spring not said',
};
export const RATIO_ON: Readonly<Record<Spring, string>> = {
  light: 'Light ratio',
  running: 'Running-spring ratio',
  'not-said': 'Ratio, spring not said',
};
