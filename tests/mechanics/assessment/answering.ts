import type { AssessedQuestion } from '../../../server/mechanics/assessment/assessment.ts';
import type { AnswerEvidence } from '../../../server/mechanics/assessment/evidence.ts';

/** The answer to a question of that code, by its own id, entered at a line. */
export function answering(
  questions: readonly AssessedQuestion[],
  code: string,
  answer: string,
  line = 500,
): AnswerEvidence {
  const question = questions.find((each) => each.code === code);
  if (question === undefined)
    throw new Error(`${code} is not asked: ${questions.map((each) => each.code).join(', ')}`);
  return { id: `answer-${line}`, line, code, questionId: question.id, question: question.ask, answer };
}
