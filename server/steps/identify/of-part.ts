import { isMeasured, isPartFeature, PART_MARKS } from '../../../shared/schemas/part-words.ts';
import type { CallContext } from '../../call/context.ts';
import type { AssessedQuestion } from '../../mechanics/assessment/assessment.ts';
import { keyOf } from '../../mechanics/assessment/common/said.ts';
import type { PartDetail, RankingDetail } from '../../mechanics/assessment/part/detail.ts';
import { stillStanding } from '../../records/corrections/entries.ts';
import type { PartReading } from '../../records/part-readings/part-readings.ts';

export const isMark = ({ kind }: PartReading): boolean => Object.hasOwn(PART_MARKS, kind);
const isCounted = ({ kind }: PartReading): boolean => isMeasured(kind) || isPartFeature(kind);

/** What a face shows of one part in the hand. */
export interface PartSeen {
  /** Every reading of it, replaced and struck ones included. */
  readonly all: readonly PartReading[];
  /** Readings that stand. */
  readonly standing: readonly PartReading[];
  /** Of them the sizes and features. */
  readonly counted: readonly PartReading[];
  readonly detail: PartDetail;
  /** Left out until something was measured or seen, and while there is no catalogue. */
  readonly ranking: RankingDetail | undefined;
  readonly questions: readonly AssessedQuestion[];
}

function seenOf({ record, assessment }: CallContext, detail: PartDetail): PartSeen {
  const all = record.partReadings.filter(({ partId }) => partId === detail.about.partId);
  const standing = stillStanding(all);
  const key = keyOf(detail.about);
  return {
    all,
    standing,
    counted: standing.filter(isCounted),
    detail,
    ranking: (detail.ranking?.counted ?? 0) === 0 ? undefined : detail.ranking,
    questions: assessment.questions.filter(({ about }) => about.of === 'part' && keyOf(about) === key),
  };
}

/** Each part in the hand, the first of the build before the others. */
export const partsSeen = (context: CallContext): PartSeen[] =>
  context.assessment.details.parts.map((detail) => seenOf(context, detail));

const newest = ({ all }: PartSeen): number => Math.max(-1, ...all.map(({ seq }) => seq));

/** The part that a page is about: the one picked, else the one that was read last. */
export function partMeant(parts: readonly PartSeen[], picked: string | undefined): PartSeen | undefined {
  const found = parts.find(({ detail }) => keyOf(detail.about) === picked);
  return found ?? parts.toSorted((a, b) => newest(b) - newest(a))[0];
}

/** The page of the step about this part. */
export const partAddress = (base: string, { detail }: PartSeen, ask?: string): string =>
  `${base}/steps/identify?part=${keyOf(detail.about)}${ask === undefined ? '' : `&ask=${ask}`}`;
