import { defined } from '../../../../../shared/defined.ts';
import type { AssessedQuestion } from '../../assessment.ts';
import { nominalSaid } from '../../common/said.ts';
import { sameRatio } from '../../common/same-ratio.ts';
import type { Evidence } from '../../evidence.ts';
import { otherwiseHeld } from '../claims/held-as.ts';
import { type Stamp, stampOf, stampQuestion } from '../claims/stamp.ts';
import { bandsOf } from '../compared/bands.ts';
import type { GroupExplained } from '../compared/explain.ts';
import { lacksOfGroup } from '../compared/lacking.ts';
import { ratioReadOf } from '../compared/reading.ts';
import { isDoubted } from '../compared/word.ts';

/** A mark that the reading is set against, with what the reading meets in its place. */
interface StampDoubt {
  readonly stamp: Stamp;
  readonly meets: string;
}

export interface StampAsked {
  readonly odd?: StampDoubt;
  readonly undotted?: Stamp;
}

/**
 * The reading repeats and is far off the mark, and is level with what the arm is sold as, its box or the card: then the
 * mark is the odd one, not the dial.
 */
function oddMark(evidence: Evidence, explained: GroupExplained): StampDoubt | undefined {
  const { group, claims } = explained;
  const [claim] = claims;
  const stamp = stampOf(evidence, group.armId);
  const read = ratioReadOf(explained);
  if (claim?.to !== 'mark' || stamp?.dotted !== true || read === undefined || read.once !== undefined)
    return undefined;
  if (!isDoubted(explained) || lacksOfGroup(explained).length > 0) return undefined;
  const met = otherwiseHeld(evidence, group).find(({ ratio }) =>
    bandsOf(ratio, read.low, read.high).every((band) => band === 'within'),
  );
  return met === undefined ? undefined : { stamp, meets: met.said };
}

/** A mark without its point that would change what the reading is set against. */
export function undottedMark(evidence: Evidence, { group, given }: GroupExplained): Stamp | undefined {
  const stamp = stampOf(evidence, group.armId);
  const { soldAs } = evidence.rockers;
  if (stamp === undefined || stamp.dotted || given === undefined) return undefined;
  const alike = soldAs !== undefined && sameRatio(soldAs, stamp.ratio);
  return alike ? undefined : stamp;
}

/** Whether the mark on the arm is its ratio: asked where that would change what the reading says, and kept once answered. */
export function stampQuestions(evidence: Evidence, explained: GroupExplained): AssessedQuestion[] {
  const { group, given } = explained;
  const { armId } = group;
  const stamp = stampOf(evidence, armId);
  if (stamp === undefined || armId === undefined || given === undefined) return [];
  const odd = oddMark(evidence, explained);
  const open = odd !== undefined || undottedMark(evidence, explained) !== undefined;
  const size =
    odd === undefined
      ? `As the ratio the reading is set against ${nominalSaid(stamp.ratio)}.`
      : `The reading is level with ${odd.meets}.`;
  const put = (weight: AssessedQuestion['weight']) =>
    stampQuestion(evidence, [armId], stamp, { weight, size, restsOn: given.entryIds });
  const asked = put('weak');
  if (asked.answered !== undefined) return [asked];
  return open ? [put('strong')] : stamp.dotted ? [] : [asked];
}

/** The mark that is asked about, while nobody has said what it is. */
export function stampAsked(evidence: Evidence, explained: GroupExplained): StampAsked {
  const [question] = stampQuestions(evidence, explained);
  if (question === undefined || question.answered !== undefined) return {};
  return defined({ odd: oddMark(evidence, explained), undotted: undottedMark(evidence, explained) });
}
