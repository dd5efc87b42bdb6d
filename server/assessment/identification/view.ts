import { z } from 'zod';
import { answer } from '../../../shared/schemas/answer.ts';
import { inInches, quantityView } from '../../../shared/schemas/answer-parts.ts';
import type { Assessment } from '../../mechanics/assessment/assessment.ts';
import type { CandidateDetail, HoleDetail, ReasonDetail } from '../../mechanics/assessment/part/detail.ts';
import { partReadingView, showPartReading } from '../../records/part-readings/view.ts';
import { type BuildRecord, catalogueOf } from '../../records/whole-build/build-record.ts';
import { headlineView, showHeadline } from '../view/headline.ts';
import { judgementView, showJudgement } from '../view/judgement.ts';
import { assessedQuestionView, showQuestion } from '../view/question.ts';

const reasonView = z.object({
  kind: z.string(),
  word: z.enum(['agrees', 'cannot-tell', 'differs', 'not-known']),
  reading: z.union([quantityView, z.string()]),
  madeFor: z.union([quantityView, z.string()]).optional(),
  difference: quantityView.optional(),
});

const candidateView = z.object({
  familyId: z.uuid(),
  code: z.string(),
  name: z.string(),
  nominalRatio: z.number().optional(),
  probability: z.number(),
  reasons: z.array(reasonView),
});

const fastenerView = z.object({
  readingId: z.uuid(),
  threads: z.array(z.object({ designation: z.string(), fit: z.enum(['agrees', 'cannot-tell']) })),
  ask: z.string().optional(),
});

const coverView = z.object({
  readingId: z.uuid(),
  verdict: z.enum(['clear', 'close', 'short']),
  reason: z.string(),
  settledBy: z.string(),
});

export const identificationView = z
  .object({
    readings: z.array(partReadingView),
    families: z.int().meta({ description: 'part families in the shop’s catalogue' }),
    candidates: z.array(candidateView).meta({ description: 'likeliest first, twenty at the most' }),
    noneOfThese: z.number().meta({ description: 'probability that it is in no line of the catalogue' }),
    next: z.array(
      z.object({
        kind: z.string(),
        bits: z.number().meta({ description: 'expected information about the family' }),
        rightFirst: z.number().meta({ description: 'chance that the family then first is the right one' }),
      }),
    ),
    tell: z.string().optional().meta({ description: 'what would tell most of the part' }),
    fasteners: z.array(fastenerView),
    cover: coverView
      .optional()
      .meta({ description: 'sideways room; needs a width, and how the cover is bolted' }),
    questions: z.array(assessedQuestionView),
    headlines: z.array(headlineView),
    judgements: z.array(judgementView),
  })
  .meta({ id: 'Identification' });

const sizeOrWord = (value: number | string) => (typeof value === 'number' ? inInches(value) : value);

const showReason = ({ kind, word, reading, madeFor, difference }: ReasonDetail) =>
  answer(reasonView, {
    kind,
    word,
    reading: sizeOrWord(reading),
    madeFor: madeFor === undefined ? undefined : sizeOrWord(madeFor),
    difference: difference === undefined ? undefined : inInches(difference),
  });

const showCandidate = ({ family, probability, reasons }: CandidateDetail) =>
  answer(candidateView, {
    familyId: family.id,
    code: family.code,
    name: family.name,
    nominalRatio: family.nominalRatio,
    probability,
    reasons: reasons.map(showReason),
  });

const showFastener = ({ entryId, threads, ask }: HoleDetail) =>
  answer(fastenerView, { readingId: entryId, threads, ask });

/** What the assessment says of the part in the hand, with every reading of it. */
export function showIdentification(record: BuildRecord, assessment: Assessment) {
  const { ranking, holes, cover } = assessment.details.part;
  return answer(identificationView, {
    readings: record.partReadings.map(showPartReading),
    families: catalogueOf(record).length,
    candidates: (ranking?.candidates ?? []).map(showCandidate),
    noneOfThese: ranking?.noneOfThese.probability ?? 1,
    next: ranking?.offers ?? [],
    tell: ranking?.tell.sentence,
    fasteners: holes.map(showFastener),
    cover:
      cover === undefined
        ? undefined
        : answer(coverView, {
            readingId: cover.entryId,
            verdict: cover.word,
            reason: cover.reason,
            settledBy: cover.settledBy,
          }),
    questions: assessment.questions.filter(({ about }) => about.of === 'part').map(showQuestion),
    headlines: assessment.headlines.filter(({ step }) => step === 'identify').map(showHeadline),
    judgements: assessment.judgements.filter(({ about }) => about.of === 'part').map(showJudgement),
  });
}
