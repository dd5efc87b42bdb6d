import { ratioSaid } from '../../common/said.ts';
import type { Band } from '../compared/bands.ts';
import type { GroupExplained } from '../compared/explain.ts';
import type { RatioRead } from '../compared/reading.ts';
import { readsAs, spans } from './told-beside.ts';
import { thenSwap, wouldTell } from './would-tell.ts';

export const FOR_FLEX = 'ordinary for an arm made with room for flex';
const DOUBTED = 'so far off that the readings are doubted before the part is';

export const useIt = ({ value }: RatioRead): string => `se ${ratioSaid(value)} for every clearance.`;

/** A reading that lies across an edge, or that a mistake may be in: what is known either way, and what would tell. */
export function toldOpen(
  explained: GroupExplained,
  bands: readonly Band[],
  read: RatioRead,
  start: string,
  stopped: boolean,
): string {
  const tells = wouldTell(explained, stopped);
  if (spans(bands, 'within', 'over'))
    return `${start}: just inside 2 % or just past it. Either way it is ${FOR_FLEX}. U${useIt(read)}`;
  if (spans(bands, 'over', 'far-over'))
    return `${start}: it cannot be told whether that is more than is ${FOR_FLEX}. ${tells}`;
  if (spans(bands, 'within', 'under'))
    return `${start}: it cannot be told whether that is within 2 %. ${tells}`;
  if (spans(bands, 'under', 'far-under'))
    return `${start}, which no spring explains; it may be so far off that the reading is doubted first.${readsAs(explained, read)} ${thenSwap(explained, stopped)}`;
  if (spans(bands, 'far-under') || spans(bands, 'far-over'))
    return `${start}, ${DOUBTED}.${readsAs(explained, read)} ${tells}`;
  if (spans(bands, 'within'))
    return `${start}, which is within 2 %, but a mistake in the reading is not ruled out. ${tells}`;
  if (spans(bands, 'over'))
    return `${start}: ${FOR_FLEX} if nothing went wrong, but a mistake is as likely. ${tells}`;
  return `${start}: whether it agrees cannot be told yet. ${tells}`;
}
