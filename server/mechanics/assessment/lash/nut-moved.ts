import { changeBetween, isOneHeat, isWithin } from '../../lash/growth.ts';
import type { LashDetail, LashValveDetail } from './detail.ts';

/** What the newest line that looked at it says of the nut. */
export const nutLine = ({ lines }: LashValveDetail) => lines.findLast(({ nut }) => nut !== 'not-looked');

/**
 * A nut that had moved, until it was set again and found held, with its gap, at the heat it was set at: one look at
 * another heat says nothing of what it did.
 */
export function nutHasMoved({ lines }: LashValveDetail, { limit }: Pick<LashDetail, 'limit'>): boolean {
  const moved = lines.findLastIndex(({ nut }) => nut === 'moved');
  if (moved < 0) return false;
  const since = lines.slice(moved + 1);
  const set = since.findLast(({ moment }) => moment === 'set');
  if (set === undefined) return true;
  return !since
    .slice(since.indexOf(set) + 1)
    .some(
      (line) =>
        line.moment === 'found' &&
        line.nut === 'held' &&
        isOneHeat(line, set) &&
        isWithin(changeBetween(line.gap, set.gap), limit.value),
    );
}
