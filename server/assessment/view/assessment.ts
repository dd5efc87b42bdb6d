import { z } from 'zod';
import { answer } from '../../../shared/schemas/answer.ts';
import { STEP_NAMES } from '../../../shared/steps.ts';
import type { Assessment } from '../../mechanics/assessment/assessment.ts';
import { assessedExplanationView, showExplained } from './explanation.ts';
import { headlineView, showHeadline } from './headline.ts';
import { judgementView, showJudgement } from './judgement.ts';
import { nextView, showNext } from './next.ts';
import { assessedQuantityView, showQuantity } from './quantity.ts';
import { assessedQuestionView, showQuestion } from './question.ts';
import { notToRunView, showNotToRun, showStop, stopView } from './stop.ts';
import { showSubject, subjectView } from './subject.ts';

/** Everything that is said about a build, as JSON has it; every page shows these sentences and no others. */
export const assessmentView = z
  .object({
    headlines: z.array(headlineView),
    stop: z.array(stopView),
    notToRun: z.array(notToRunView),
    notCovered: z
      .array(z.object({ id: z.string(), sentence: z.string(), instead: z.string() }))
      .meta({ description: 'what is not worked out for this engine, with what is done instead' }),
    next: nextView.optional(),
    missing: z.array(
      z.object({ id: z.string(), step: z.enum(STEP_NAMES), sentence: z.string(), must: z.boolean() }),
    ),
    judgements: z.array(judgementView),
    questions: z.array(assessedQuestionView),
    quantities: z.array(assessedQuantityView),
    explanations: z.array(assessedExplanationView),
    remaining: z.array(z.object({ about: subjectView, names: z.array(z.number()) })),
  })
  .meta({ id: 'Assessment' });

export const showAssessment = (assessment: Assessment) =>
  answer(assessmentView, {
    headlines: assessment.headlines.map(showHeadline),
    stop: assessment.stop.map(showStop),
    notToRun: assessment.notToRun.map(showNotToRun),
    notCovered: assessment.notCovered,
    next: assessment.next === undefined ? undefined : showNext(assessment.next),
    missing: assessment.missing,
    judgements: assessment.judgements.map(showJudgement),
    questions: assessment.questions.map(showQuestion),
    quantities: assessment.quantities.map(showQuantity),
    explanations: assessment.explanations.map(showExplained),
    remaining: assessment.remaining.map(({ about, names }) => ({ about: showSubject(about), names })),
  });
