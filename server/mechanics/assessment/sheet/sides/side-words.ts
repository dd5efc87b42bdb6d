import type { AssessedQuestion, Judgement } from '../../assessment.ts';
import { inches, nominalSaid, ratioSaid } from '../../common/said.ts';
import { awaySaid } from '../../ratio/told/ratio-said.ts';
import { isLashIn, type Level } from './side-level.ts';

/** The words of the questions about a whole side. */
export const SIDE_OFF = 'side-off';
export const LOBES_OFF_CARD = 'lobes-off-card';

export interface Told {
  readonly judgements: readonly Judgement[];
  readonly questions: readonly AssessedQuestion[];
}

/** `intakes` of `intake`. */
export const plural = (side: string): string => `${side}s`;

/** What they are held to be, in words: `the 1.6 stamped on them`. */
export function claimed({ claim }: Level): string {
  if (claim === undefined) return '';
  const ratio = nominalSaid(claim.ratio);
  if (claim.to === 'mark') return `the ${ratio} stamped on them`;
  if (claim.isPlanned === true) return `the planned ${ratio}`;
  return claim.wasThen === true
    ? `the ${ratio} they were sold as when they were read`
    : `the ${ratio} they are sold as`;
}

/** Where the lash was left in or not said, or a lifter may sink, no word against a mark rests on it. */
export function lashLack({ hydraulic, lash, lashOut }: Level): string[] {
  if (hydraulic) return ['a reading on a solid or locked lifter'];
  if (lash === undefined) return lashOut ? [] : ['how the lash was when they were read'];
  return isLashIn({ hydraulic, lash }) ? ['a reading of them at zero lash'] : [];
}

/** The same as it is told after what was found. */
export function lashTold({ hydraulic, lash, lashOut }: Level): string {
  if (hydraulic) return ' Not their ratio yet: a hydraulic lifter that sinks reads low.';
  if (lash === 'set') return ' Not their ratio yet: the lash was left in.';
  if (lashOut) return ' Those that were low had their lash in, as was answered, and were read again.';
  return lash === undefined ? ' How the lash was is not said.' : '';
}

export const SPRING = { light: '', running: ' on the running spring', 'not-said': '' } as const;

/** `, 1.603 with the card’s .018 in of lash put back` */
const backSaid = ({ back }: Level): string =>
  back === undefined
    ? ''
    : `, ${ratioSaid(back.ratio)} with the card’s ${inches(back.lash)} of lash put back`;

/** Where the middle ratio of a side stands, in words that promise no more than it bears; of some of it nothing is for all. */
export function standing(level: Level, isOfAll = true): string {
  const { ratio, claim, bands, spring, named = '' } = level;
  // No middle ratio: what is not known is said, with what it takes.
  if (ratio === undefined)
    return ' Not known: their ratio. It takes the lobe lift under each, read at the lifter or taken from the card.';
  const at = `Their middle ratio${SPRING[spring]} is ${ratioSaid(ratio.value)}`;
  // How far off what they are held to be is told of no lift that is short by its lash.
  if (isLashIn(level)) return ` ${at} as read${backSaid(level)}.`;
  if (claim === undefined || spring === 'not-said') return ` ${at}${named}.`;
  if (spring === 'running') return ` ${at}; a loaded ratio is set against no mark.`;
  const away = `${at}, ${awaySaid(ratio.value, claim.ratio)} ${claimed(level)}`;
  // What is off since makes no clearance.
  if (bands.includes('over') && (claim.wasThen === true || !isOfAll))
    return ` ${away}: ordinary for arms made with room for flex.`;
  if (bands.includes('over'))
    return ` ${away}: ordinary for arms made with room for flex. Use ${ratioSaid(ratio.value)} for every clearance.`;
  return ` ${away}.`;
}
