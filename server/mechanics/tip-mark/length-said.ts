import { formatQuantity } from '../../../shared/quantities/format.ts';
import { fromSi } from '../../../shared/quantities/units.ts';
import { EFFECTIVE_SHORTER } from '../setting/setting-table.ts';
import type { LengthOver, MarkContext } from './types.ts';

export const inchesSaid = (si: number): string => formatQuantity(fromSi(si, 'in'), { places: 3 });

const OVER: Readonly<Record<LengthOver, string>> = { ends: ' over its ends', gauge: ' by gauge' };

/** Over what a pushrod’s length was taken; nothing where nobody said. */
export const overSaid = (over: LengthOver | undefined): string => (over === undefined ? '' : OVER[over]);

/** The same length as it is read the other way. */
export const toldOver = (length: number, from: LengthOver, to: LengthOver): number =>
  from === to ? length : length + (to === 'ends' ? EFFECTIVE_SHORTER.by : -EFFECTIVE_SHORTER.by);

/** `6.960 in by gauge, 6.977 in over its ends`: both where this valve’s lengths were told both ways. */
export function lengthSaid(length: number, { over, bothWays }: MarkContext): string {
  const said = `${inchesSaid(length)}${overSaid(over)}`;
  if (over === undefined || bothWays !== true) return said;
  const other = over === 'ends' ? 'gauge' : 'ends';
  return `${said}, ${inchesSaid(toldOver(length, over, other))}${overSaid(other)}`;
}
