import { IN } from '../../kit/si.ts';
import { inchesSaid, toldOver } from '../../tip-mark/length-said.ts';
import type { LengthOver } from '../../tip-mark/types.ts';
import type { Assessment, Headline } from '../assessment.ts';
import { listed, placeOf } from '../common/said.ts';
import type { Evidence } from '../evidence.ts';
import type { PushrodEvidence } from '../workings/evidence.ts';
import { lastKept } from '../workings/kept.ts';
import type { MarkedValveDetail, MarksDetail } from './detail.ts';

/** The figure of a kept pushrod length: its headline rests on it, and it lacks nothing while it counts. */
const OF_SUM = 'working:pushrod';
const OF_STAND = 'working:stand';

/** A sum and a mark that are nearer than this are of one length: half a step of stock, common practice, no published source. */
const ONE_LENGTH = 0.025 * IN;
/** A lash that was taken off at the pushrod is seldom more: common practice, no published source. */
const LASH = 0.02 * IN;

const SUM_OVER: Readonly<Record<PushrodEvidence['told'], LengthOver | undefined>> = {
  'as-read': undefined,
  overall: 'ends',
  effective: 'gauge',
};

/** The sum was made at another length than the one that the marks let stay; what holds between them told off first. */
function isElsewhere(
  { length, added = 0, lashOff, told }: PushrodEvidence,
  { at, over }: Extract<MarkedValveDetail['length'], { how: 'stays' }>,
): boolean {
  if (at === undefined) return false;
  const sumOver = SUM_OVER[told];
  const known = over !== undefined && sumOver !== undefined;
  const mark = known ? toldOver(at, over, sumOver) : at;
  const unsaid = known ? 0 : toldOver(0, 'gauge', 'ends');
  const off = length - added - mark;
  return Math.abs(off) > ONE_LENGTH + unsaid + (lashOff === true ? LASH : 0);
}

const marksOf = (valves: readonly MarkedValveDetail[]): string =>
  `the mark${valves.length > 1 ? 's' : ''} of ${listed(valves.map(placeOf))}`;

/** What the length of the checker and the length that the marks ask for are to each other, and which holds. */
function besideSaid(sum: PushrodEvidence, valves: readonly MarkedValveDetail[]): string | undefined {
  const open = valves.filter(({ length }) => length?.how === 'open');
  if (open.length > 0)
    return `That is the length to order by the checker; what ${marksOf(open)} ask${open.length > 1 ? '' : 's'} for next is only a length to try, and goes first: order none until a mark may stay.`;
  for (const valve of valves) {
    const { length } = valve;
    if (length?.how !== 'stays') continue;
    if (isElsewhere(sum, length))
      return `It was worked out at another length than the ${inchesSaid(length.at ?? 0)} that ${marksOf([valve])} lets stay, and the mark holds: work it out again from there, and order none until then.`;
    if (length.at !== undefined && ((sum.added ?? 0) > 0 || sum.lashOff === true))
      return `That is the one to order; the ${inchesSaid(length.at)} of ${marksOf([valve])} is the checker, without what the adjustment ${sum.lashOff === true ? 'takes off' : 'adds'}.`;
  }
  return undefined;
}

/**
 * The kept pushrod length with what it is beside the lengths that the marks ask for: a mark goes before the sum, because the
 * sum is made with the mark in its place.
 *
 * Source: `pushrod-length` holds with the tip’s mark in its place; order by common practice, no published source.
 */
export function besideMarks(
  { headlines, quantities }: Pick<Assessment, 'headlines' | 'quantities'>,
  { valves, stand }: MarksDetail,
  evidence: Evidence,
): readonly Headline[] {
  if (stand !== undefined)
    return headlines.map((each) =>
      each.quantityId === OF_STAND
        ? { ...each, sentence: `Nothing is told of this height yet. ${stand.said}` }
        : each,
    );
  const counts = quantities.some(({ id, lacks }) => id === OF_SUM && lacks.length === 0);
  const sum = counts ? lastKept(evidence, 'pushrod')?.set : undefined;
  const said = sum === undefined ? undefined : besideSaid(sum, valves);
  if (said === undefined) return headlines;
  // What the checker stands at is not what is ordered, where the adjustment is in it.
  const isAdjusted = sum !== undefined && ((sum.added ?? 0) > 0 || sum.lashOff === true);
  return headlines.map((each) => {
    if (each.quantityId === OF_SUM) return { ...each, sentence: `${each.sentence} ${said}` };
    return isAdjusted && each.id.startsWith('headline:mark:')
      ? { ...each, sentence: each.sentence.replace(' is the length', ' is the checker’s length') }
      : each;
  });
}
