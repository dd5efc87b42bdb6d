import type { RatioWord } from '../words.ts';
import { type Band, bandsOf } from './bands.ts';
import type { GroupExplained } from './explain.ts';
import type { Claim } from './marks.ts';
import { ratioReadOf } from './reading.ts';

/** Below this chance of "nothing went wrong" nothing is ruled, as in the inference. */
const NO_MISTAKE = 0.5;

/** What a reading inside one band says of what the arm is held to be; one that is far off is doubted and says nothing. */
const WORDS: Readonly<Record<Band, RatioWord>> = {
  'far-under': 'cannot-tell',
  under: 'differs',
  within: 'agrees',
  over: 'differs',
  'far-over': 'cannot-tell',
};

export function bandsAgainst(explained: GroupExplained, { ratio }: Claim): Band[] {
  const read = ratioReadOf(explained);
  return read === undefined ? [] : bandsOf(ratio, read.low, read.high);
}

/** Where the arm is held to be two things, readings tell at most that it is not the second. */
function wordBeside(explained: GroupExplained, claim: Claim): RatioWord {
  const sure = (explained.result?.noMistake ?? 0) >= NO_MISTAKE;
  return sure && !bandsAgainst(explained, claim).includes('within') ? 'differs' : 'cannot-tell';
}

/**
 * The word against what the arm is held to be, where nothing is lacking for one. The inference rules where it can; it
 * was told the first claim. Where it leaves it open, a reading whose whole interval lies in one band is told by that
 * band, as long as a mistake is not likelier than none; one that straddles an edge can't be told.
 */
export function wordAgainst(explained: GroupExplained, claim: Claim): RatioWord {
  const { result, claims } = explained;
  if (result === undefined) return 'cannot-tell';
  if (claims[0] !== claim) return wordBeside(explained, claim);
  if (result.againstMark !== undefined && result.againstMark !== 'cannot-tell') return result.againstMark;
  const [band, ...others] = bandsAgainst(explained, claim);
  if (band === undefined || others.length > 0 || result.noMistake < NO_MISTAKE) return 'cannot-tell';
  return WORDS[band];
}

/** So far off what the arm is held to be that the reading is doubted before the part is. */
export function isDoubted(explained: GroupExplained): boolean {
  const [claim] = explained.claims;
  if (claim === undefined) return false;
  const bands = bandsAgainst(explained, claim);
  return bands.length > 0 && bands.every((band) => band.startsWith('far-'));
}
