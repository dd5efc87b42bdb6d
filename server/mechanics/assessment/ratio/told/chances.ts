import type { GroupExplained } from '../compared/explain.ts';
import { lacksOfGroup } from '../compared/lacking.ts';
import { ratioReadOf } from '../compared/reading.ts';
import { bandTold, wordAgainst } from '../compared/word.ts';
import { type ArmsInHand, givesName } from './names.ts';

/**
 * `told`: each name and each mistake with its chance. `open`: the headline leaves it open, so that what would explain
 * the readings is listed without a figure. `none`: nothing may stand yet.
 */
export type Chances = 'told' | 'open' | 'none';

/** A word stands, or the one band that the reading lies in is told. */
function isClosed(explained: GroupExplained): boolean {
  const [claim] = explained.claims;
  if (claim === undefined) return true;
  if (wordAgainst(explained, claim) !== 'cannot-tell') return true;
  const band = bandTold(explained, claim);
  return band === 'over' || band === 'under';
}

/**
 * Whether chances may stand beside the headline: what it leaves open no figure may close. Much of a chance is what arms
 * are usually like and what this one is stamped or sold as, and would be heard as what was read.
 */
export function chancesOf(explained: GroupExplained, inHand: ArmsInHand | undefined): Chances {
  const { result, claims } = explained;
  const read = ratioReadOf(explained);
  if (result === undefined || read === undefined || lacksOfGroup(explained).length > 0) return 'none';
  if (claims.length === 0) return givesName(result, read, inHand) ? 'told' : 'open';
  return isClosed(explained) ? 'told' : 'open';
}
