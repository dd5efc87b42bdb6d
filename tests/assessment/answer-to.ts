import type { Assessment } from '../../server/mechanics/assessment/assessment.ts';
import type { AnswerEvidence } from '../../server/mechanics/assessment/evidence.ts';

/** An answer to the question of this word, as the page sends it: its id, and what was chosen. */
export function answerTo({ questions }: Assessment, code: string, answer: string): AnswerEvidence {
  const question = questions.find((each) => each.code === code);
  if (question === undefined) throw new Error(`nothing is asked as ${code}`);
  return { id: `answer-${answer}`, line: 90, code, question: question.ask, questionId: question.id, answer };
}
