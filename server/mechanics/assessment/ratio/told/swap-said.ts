import type { Band } from '../compared/bands.ts';
import type { GroupExplained } from '../compared/explain.ts';
import type { RatioRead } from '../compared/reading.ts';
import { readsAs } from './told-beside.ts';

/** Bands that neither agreement nor room for flex accounts for. */
export const isOff = (band: Band): boolean => band !== 'within' && band !== 'over';

/** What a swap made of a reading that is off what the arm is held to be. */
export function toldBySwap(explained: GroupExplained, read: RatioRead): string | undefined {
  const swap = explained.group.told;
  if (swap === undefined || swap.odd === 'other') return undefined;
  switch (`${swap.verdict} ${swap.odd}`) {
    case 'part own':
      return `, on both valves: it is the arm, as the swap told.${readsAs(explained, read)}`;
    case 'part one-of-two':
      return ': it is the part, as the swap told; a third arm tells which of the two.';
    case 'position own':
      return ', with both arms: it is its position and not the arm, as the swap told.';
    case 'position one-of-two':
      return ': it stayed on one of the two valves, as the swap told, and is not the arm.';
    default:
      return ': the arm is part of it and the position is too, as the swap told.';
  }
}
