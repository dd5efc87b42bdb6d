import { PART_FEATURES, PART_MARKS, PART_SIZES } from '../../../shared/schemas/part-words.ts';
import type { CallContext } from '../../call/context.ts';
import type { AssessedQuestion } from '../../mechanics/assessment/assessment.ts';
import type { PartDetail, RankingDetail } from '../../mechanics/assessment/part/detail.ts';
import { stillStanding } from '../../records/corrections/entries.ts';
import type { PartReading } from '../../records/part-readings/part-readings.ts';

export const isMark = ({ kind }: PartReading): boolean => Object.hasOwn(PART_MARKS, kind);
const COUNTED: readonly string[] = [...Object.keys(PART_SIZES), ...Object.keys(PART_FEATURES)];

/** What a face shows of the part in the hand. */
export interface PartSeen {
  /** Readings that stand. */
  readonly standing: readonly PartReading[];
  /** Of them the sizes and features. */
  readonly counted: readonly PartReading[];
  readonly detail: PartDetail;
  /** Left out until something was measured or seen, and while there is no catalogue. */
  readonly ranking: RankingDetail | undefined;
  readonly questions: readonly AssessedQuestion[];
}

export function partSeen({ record, assessment }: CallContext): PartSeen {
  const standing = stillStanding(record.partReadings);
  const counted = standing.filter(({ kind }) => COUNTED.includes(kind));
  const { part } = assessment.details;
  return {
    standing,
    counted,
    detail: part,
    ranking: counted.length === 0 ? undefined : part.ranking,
    questions: assessment.questions.filter(({ about }) => about.of === 'part'),
  };
}
