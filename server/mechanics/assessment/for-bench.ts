import { defined } from '../../../shared/defined.ts';
import type { AssessedQuestion, Assessment, NextAction } from './assessment.ts';

const question = ({ testAtBench, ...each }: AssessedQuestion): AssessedQuestion => ({
  ...each,
  test: testAtBench ?? each.test,
});

const action = ({
  sentenceAtBench,
  besideAnswerAtBench,
  stepAtBench,
  besideAnswer,
  ...each
}: NextAction): NextAction => ({
  ...each,
  step: stepAtBench ?? each.step,
  sentence: sentenceAtBench ?? each.sentence,
  ...defined({
    besideAnswer: besideAnswerAtBench ?? (sentenceAtBench === undefined ? besideAnswer : undefined),
  }),
});

const withWayOut = <Reason extends { readonly wayOut: string; readonly wayOutAtBench?: string }>(
  reason: Reason,
): Reason => ({ ...reason, wayOut: reason.wayOutAtBench ?? reason.wayOut });

/**
 * The same assessment in the words for whoever stands at the engine: a sentence that has two forms is told in the one
 * that is done there, not in the one that the desk asks with. Nothing else differs.
 */
export const forBench = (assessment: Assessment): Assessment => ({
  ...assessment,
  questions: assessment.questions.map(question),
  stop: assessment.stop.map(withWayOut),
  notToRun: assessment.notToRun.map(withWayOut),
  ...defined({ next: assessment.next === undefined ? undefined : action(assessment.next) }),
});
