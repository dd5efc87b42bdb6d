import type { AssessedQuestion } from '../assessment.ts';
import type { Evidence, LashEvidence, ValvePlace } from '../evidence.ts';
import { onceEach } from './once.ts';
import { placeOf } from './said.ts';
import { asItWasDone, inOrder, sameDays } from './same-day.ts';

const asEntered = onceEach(placeOf, ({ lash }: Evidence, place: ValvePlace): readonly LashEvidence[] =>
  inOrder(lash.filter((line) => line.standing && placeOf(line) === placeOf(place))),
);

/** The log of one valve, oldest first: by the days its lines are of, then as they were entered, unless it was said otherwise. */
export const lashLogOf = onceEach(placeOf, (evidence: Evidence, place: ValvePlace): readonly LashEvidence[] =>
  asItWasDone(asEntered(evidence, place), evidence),
);

/** Which of two lines of one day came first, where nobody can tell from the log. */
export const orderQuestions = onceEach(
  placeOf,
  (evidence: Evidence, place: ValvePlace): readonly AssessedQuestion[] =>
    sameDays(asEntered(evidence, place), evidence).map(({ question }) => question),
);
