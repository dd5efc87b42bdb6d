import { formatNumber, formatQuantity } from '../../../shared/quantities/format.ts';
import { fromSi } from '../../../shared/quantities/units.ts';
import type { SheetCell } from '../../assessment/sheet/valve-rows.ts';
import type { RatioOfLifts } from '../../mechanics/valve-sheet/figures.ts';

const inches = (si: number): string => formatQuantity(fromSi(si, 'in'), { places: 3 }).slice(0, -3);

/** `.560`, or the gauges it lies between: `.024 to .028`, `over .040`. */
export function sayCell({ value, low, high }: Pick<SheetCell, 'value' | 'low' | 'high'>): string {
  if (value !== undefined) return inches(value);
  if (low !== undefined && high !== undefined) return `${inches(low)} to ${inches(high)}`;
  if (low !== undefined) return `over ${inches(low)}`;
  return high === undefined ? '' : `under ${inches(high)}`;
}

/** What is below a figure: its passes and their spread. */
export function sayPasses({ passes, spread }: Pick<SheetCell, 'passes' | 'spread'>): string {
  if (passes < 2) return '';
  return spread === undefined ? `${passes} readings` : `${passes} passes, spread ${inches(spread)}`;
}

export function sayRatio({ value, low, high }: RatioOfLifts): string {
  if (value !== undefined) return formatNumber(value, 3);
  if (low !== undefined && high !== undefined) return `${formatNumber(low, 3)} to ${formatNumber(high, 3)}`;
  if (low !== undefined) return `over ${formatNumber(low, 3)}`;
  return high === undefined ? '' : `under ${formatNumber(high, 3)}`;
}

/** Names of the lifts and ratios by the spring they were read on. */
export const ON_SPRING = {
  light: 'light spring',
  running: 'running spring',
  'not-said': 'spring not said',
} as const;
export const RATIO_ON = {
  light: 'Light ratio',
  running: 'Running-spring ratio',
  'not-said': 'Ratio, spring not said',
} as const;
