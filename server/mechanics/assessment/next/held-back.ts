import type { AssessedQuestion } from '../assessment.ts';
import { isAsked } from './is-asked.ts';

const WAITS = 'Not while the stop stands; after it: ';

/** Under a stop a question that takes turning the engine says that its test waits. */
export const heldBack = (question: AssessedQuestion): AssessedQuestion =>
  isAsked(question)
    ? question
    : { ...question, test: `${WAITS}${question.test.charAt(0).toLowerCase()}${question.test.slice(1)}` };
