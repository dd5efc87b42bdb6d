import { byText } from '../../kit/by-text.ts';
import { EQUAL } from '../../kit/nearest.ts';
import type { GapWord } from '../words.ts';
import type { JudgedGap } from './gap.ts';

/* Which of several readings of one gap is told: each is an interval that the gap lies in, and all of them are of one gap. */

const RANK: Readonly<Record<GapWord, number>> = { short: 0, close: 1, clear: 3 };
const rankOf = ({ word }: JudgedGap): number => (word === undefined ? 2 : RANK[word]);
/** One of which only the high end is told, on a lifter that sinks, says no more than that it is less than that. */
const leastOf = ({ gap }: JudgedGap): number => gap.low ?? gap.value ?? gap.high ?? Number.NEGATIVE_INFINITY;

/** Read before the cam or the arm was changed, or found off, and not short: it says nothing of the gap as it is. */
const isOutdated = ({ word, entry, cam, foundOff }: JudgedGap): boolean =>
  word === undefined &&
  (entry.scan?.camMoved === true ||
    cam?.moved === true ||
    foundOff === true ||
    entry.otherArms === 'off-since');

const isOfOff = ({ entry }: JudgedGap): boolean => entry.otherArms === 'off-since';

/** Once the gap has a word with the arms that are on, what was read with those that are off holds for those alone. */
export const ofArmsOn = (gaps: readonly JudgedGap[]): readonly JudgedGap[] =>
  gaps.some((gap) => gap.word !== undefined && !isOfOff(gap)) ? gaps.filter((gap) => !isOfOff(gap)) : gaps;

/** Those that say something of the gap as it is; where none does, all. */
function ofNow(gaps: readonly JudgedGap[]): readonly JudgedGap[] {
  const own = ofArmsOn(gaps);
  const holding = own.filter((gap) => !isOutdated(gap));
  return holding.length === 0 ? own : holding;
}

/** Its own figure is in question, and the other was read as less and has its word: that one stands meanwhile. */
const isBeside = (doubted: JudgedGap, other: JudgedGap): boolean =>
  (doubted.doubts ?? []).length > 0 &&
  doubted.word === undefined &&
  other.word !== undefined &&
  leastOf(other) < leastOf(doubted);

/** Read with the same arms, as far as they are named. */
const isOfSameArms = ({ entry: one }: JudgedGap, { entry: other }: JudgedGap): boolean =>
  (one.otherArms ?? one.arms) === (other.otherArms ?? other.arms) &&
  one.soldAsThen === other.soldAsThen &&
  (one.armId === undefined || other.armId === undefined || one.armId === other.armId);

/** By how much the gap may be less than it reads, but for its lash; of one that sinks or waits nobody knows. */
function openOf({ mayBe: { low }, gap: { value, high } }: JudgedGap): number {
  const read = value ?? high;
  return low === undefined || read === undefined ? Number.POSITIVE_INFINITY : read - low;
}

const lashOf = ({ lash }: JudgedGap): number => lash?.most ?? 0;

/** Some one gap lies in both. */
function meet(one: JudgedGap, other: JudgedGap): boolean {
  const under = (a: JudgedGap, b: JudgedGap): boolean =>
    (a.mayBe.low ?? Number.NEGATIVE_INFINITY) - lashOf(a) <
    (b.mayBe.high ?? Number.POSITIVE_INFINITY) - EQUAL;
  return under(one, other) && under(other, one);
}

/**
 * The better one leaves less open, of what bends, sinks or goes on, of the tool, and of the lash. Where nobody knows by
 * how much the other reads too large, its lash is no merit of it.
 */
function leavesLess(better: JudgedGap, one: JudgedGap): boolean {
  const [open, less] = [openOf(one), openOf(better)];
  if (open === Number.POSITIVE_INFINITY) return less < open;
  return (
    less <= open + EQUAL &&
    lashOf(better) <= lashOf(one) + EQUAL &&
    (less < open - EQUAL || lashOf(better) < lashOf(one) - EQUAL)
  );
}

/**
 * What it leaves open another reading of the same has told: the gap lies in both, and by the other it is known better.
 * One that is short stands until a person strikes it out; one that can’t be the same gap is asked about, and stands too.
 */
function isToldBy(one: JudgedGap, better: JudgedGap): boolean {
  if (!isOfSameArms(one, better) || one.word === 'short') return false;
  if (one.isGuess) return !better.isGuess;
  if ((one.doubts ?? []).length > 0 || better.word === undefined) return false;
  return leavesLess(better, one) && meet(one, better);
}

/** The readings that count: a guess, or one that reads large, stands behind what was read better since. */
export function countedOf(gaps: readonly JudgedGap[]): readonly JudgedGap[] {
  const held = ofNow(gaps);
  return held.filter((gap) => !held.some((other) => isBeside(gap, other) || isToldBy(gap, other)));
}

/** The worst of several readings of one gap: it stands until a person strikes it out. */
export const worstOf = (gaps: readonly JudgedGap[]): JudgedGap | undefined =>
  countedOf(gaps).toSorted(
    (a, b) => rankOf(a) - rankOf(b) || leastOf(a) - leastOf(b) || byText(a.entry.id, b.entry.id),
  )[0];
