import type { AssessedQuestion } from '../assessment.ts';
import type { Evidence, LashEvidence, ValvePlace } from '../evidence.ts';
import { placeOf } from './said.ts';
import { asItWasDone, inOrder, sameDays } from './same-day.ts';

const asEntered = ({ lash }: Evidence, place: ValvePlace): LashEvidence[] =>
  inOrder(lash.filter((line) => line.standing && placeOf(line) === placeOf(place)));

/** The log of one valve, oldest first: by the days its lines are of, then as they were entered, unless it was said otherwise. */
export const lashLogOf = (evidence: Evidence, place: ValvePlace): LashEvidence[] =>
  asItWasDone(asEntered(evidence, place), evidence);

/** Which of two lines of one day came first, where nobody can tell from the log. */
export const orderQuestions = (evidence: Evidence, place: ValvePlace): AssessedQuestion[] =>
  sameDays(asEntered(evidence, place), evidence).map(({ question }) => question);
