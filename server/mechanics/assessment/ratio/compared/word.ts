import { DEFAULT_ASSUMPTIONS } from '../../../explain-readings/assumptions.ts';
import type { RatioWord } from '../../words.ts';
import type { Claim } from '../claims/marks.ts';
import { type Band, bandsOf, WITHIN } from './bands.ts';
import type { GroupExplained } from './explain.ts';
import { ratioReadOf } from './reading.ts';

export function bandsAgainst(explained: GroupExplained, { ratio }: Claim): Band[] {
  const read = ratioReadOf(explained);
  return read === undefined ? [] : bandsOf(ratio, read.low, read.high);
}

/** A mistake is no likelier than none: what was read may be told as it is. */
const isSure = ({ result }: GroupExplained): boolean =>
  (result?.noMistake ?? 0) >= DEFAULT_ASSUMPTIONS.noMistakeSettled;

/** The one band that the whole interval of the reading lies in, where a mistake is no likelier than none. */
export function bandTold(explained: GroupExplained, claim: Claim): Band | undefined {
  const [band, ...others] = bandsAgainst(explained, claim);
  if (explained.throughLift) return undefined;
  return others.length === 0 && isSure(explained) ? band : undefined;
}

/** Weighed with everything, hardly any chance is left for a ratio within the band of the claim. */
export function isRuledOut(
  { result }: Pick<GroupExplained, 'result'>,
  { ratio }: Pick<Claim, 'ratio'>,
): boolean {
  const [low, high] = result?.ratio.interval95 ?? [ratio, ratio];
  return low > ratio * (1 + WITHIN) || high < ratio * (1 - WITHIN);
}

/** Where the arm is held to be two things, readings tell at most that it is not the second. */
const wordBeside = (explained: GroupExplained, claim: Claim): RatioWord =>
  isSure(explained) && isRuledOut(explained, claim) && !bandsAgainst(explained, claim).includes('within')
    ? 'differs'
    : 'cannot-tell';

/** A swap told that it is this very arm. */
const isOfArm = ({ group: { told } }: GroupExplained): boolean =>
  told?.verdict === 'part' && told.odd === 'own';

/**
 * The word against what the arm is held to be, where nothing is lacking for one. It is the inference's, which was told
 * the first claim; and it is said only where the interval that stands beside it says the same: one that reaches over
 * the edge of the band agrees with nothing, and one that reaches into it does not differ.
 */
export function wordAgainst(explained: GroupExplained, claim: Claim): RatioWord {
  const { result, claims } = explained;
  if (result === undefined || explained.throughLift) return 'cannot-tell';
  if (claims[0] !== claim) return wordBeside(explained, claim);
  const bands = bandsAgainst(explained, claim);
  const within = bands.includes('within');
  if (result.againstMark === 'agrees' && within && bands.length === 1) return 'agrees';
  // What went along with the arm to another valve was no mistake of reading it on the one.
  if (isOfArm(explained) && bands.length > 0 && !within && !bands.includes('over')) return 'differs';
  return result.againstMark === 'differs' && !within ? 'differs' : 'cannot-tell';
}

/** So far off what the arm is held to be that the reading is doubted before the part is, unless a swap told that it is the arm. */
export function isDoubted(explained: GroupExplained): boolean {
  const [claim] = explained.claims;
  if (isOfArm(explained)) return false;
  if (claim === undefined || explained.throughLift) return false;
  const bands = bandsAgainst(explained, claim);
  return bands.length > 0 && bands.every((band) => band.startsWith('far-'));
}
