import type { AssessedQuestion, Judgement } from '../assessment.ts';
import { nominalSaid, ratioSaid } from '../common/said.ts';
import { awaySaid } from '../ratio/ratio-said.ts';
import type { Level } from './side-level.ts';

export interface Told {
  readonly judgements: readonly Judgement[];
  readonly questions: readonly AssessedQuestion[];
}

export const plural = (side: string): string => `${side}s`;

export const claimed = ({ claim }: Level): string =>
  claim === undefined
    ? ''
    : `the ${nominalSaid(claim.ratio)} ${claim.to === 'mark' ? 'stamped on them' : 'they are sold as'}`;

/** A sheet does not say how the lash was: no word against a mark rests on it. */
export const NO_LASH = 'how the lash was when they were read';

export const SPRING = { light: '', running: ' on the running spring', 'not-said': '' } as const;

/** Where the middle ratio of a side stands, in words that promise no more than it bears. */
export function standing(level: Level): string {
  const { ratio, claim, bands, spring } = level;
  if (ratio === undefined) return '';
  const at = `Their middle ratio${SPRING[spring]} is ${ratioSaid(ratio.value)}`;
  if (claim === undefined || spring === 'not-said') return ` ${at}.`;
  const away = `${at}, ${awaySaid(ratio.value, claim.ratio)} ${claimed(level)}`;
  if (spring === 'running') return ` ${away}; a loaded ratio is set against no mark.`;
  if (bands.includes('over'))
    return ` ${away}: ordinary for arms made with room for flex. Use ${ratioSaid(ratio.value)} for every clearance.`;
  return ` ${away}.`;
}
