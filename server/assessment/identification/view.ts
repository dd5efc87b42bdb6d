import { z } from 'zod';
import { answer } from '../../../shared/schemas/answer.ts';
import type { Assessment } from '../../mechanics/assessment/assessment.ts';
import { partReadingView, showPartReading } from '../../records/part-readings/view.ts';
import { type BuildRecord, catalogueOf } from '../../records/whole-build/build-record.ts';
import { headlineView, showHeadline } from '../view/headline.ts';
import { judgementView, showJudgement } from '../view/judgement.ts';
import { assessedQuestionView, showQuestion } from '../view/question.ts';
import { partView } from './part-schema.ts';
import { showPart } from './part-view.ts';

export const identificationView = z
  .object({
    readings: z.array(partReadingView).meta({ description: 'of every part, each with the id of its part' }),
    families: z.int().meta({ description: 'part families in the shop’s catalogue' }),
    parts: z
      .array(partView)
      .meta({ description: 'each part in the hand, the first of the build before others' }),
    questions: z.array(assessedQuestionView),
    headlines: z.array(headlineView),
    judgements: z.array(judgementView),
  })
  .meta({ id: 'Identification' });

/** What the assessment says of the parts in the hand, with every reading of them. */
export function showIdentification(record: BuildRecord, assessment: Assessment) {
  return answer(identificationView, {
    readings: record.partReadings.map(showPartReading),
    families: catalogueOf(record).length,
    parts: assessment.details.parts.map(showPart),
    questions: assessment.questions.filter(({ about }) => about.of === 'part').map(showQuestion),
    headlines: assessment.headlines.filter(({ step }) => step === 'identify').map(showHeadline),
    judgements: assessment.judgements.filter(({ about }) => about.of === 'part').map(showJudgement),
  });
}
