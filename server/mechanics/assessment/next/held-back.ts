import type { AssessedQuestion } from '../assessment.ts';
import { AFTER_THE_STOP } from '../common/way-out.ts';
import { isAsked } from './is-asked.ts';

/** Under a stop a question that takes turning the engine says that its test waits. */
export const heldBack = (question: AssessedQuestion): AssessedQuestion =>
  isAsked(question)
    ? question
    : {
        ...question,
        test: `${AFTER_THE_STOP}${question.test.charAt(0).toLowerCase()}${question.test.slice(1)}`,
      };
