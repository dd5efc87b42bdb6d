import type { AssessedQuestion } from '../assessment.ts';
import type { Evidence, LashEvidence, ValvePlace } from '../evidence.ts';
import { onceEach } from './once.ts';
import { placeOf } from './said.ts';
import { asItWasDone, inOrder, sameDays } from './same-day.ts';

const asEntered = onceEach(placeOf, ({ lash }: Evidence, place: ValvePlace): readonly LashEvidence[] =>
  inOrder(lash.filter((line) => line.standing && placeOf(line) === placeOf(place))),
);

/**
 * All that was ever logged of one valve, oldest first: by the days its lines are of, then as they were entered, unless it
 * was said otherwise.
 */
export const wholeLogOf = onceEach(
  placeOf,
  (evidence: Evidence, place: ValvePlace): readonly LashEvidence[] =>
    asItWasDone(asEntered(evidence, place), evidence),
);

/** Another arm is on from this line on. */
const isOtherArm = (line: LashEvidence, before: readonly LashEvidence[]): boolean => {
  const last = before.findLast(({ armId }) => armId !== undefined);
  return line.armId !== undefined && last !== undefined && line.armId !== last.armId;
};

/** The log of one valve, in pieces: each with one arm, as far as it was said. */
export const byArm = (lines: readonly LashEvidence[]): LashEvidence[][] => {
  const pieces: LashEvidence[][] = [];
  lines.forEach((line, at) => {
    if (pieces.length === 0 || isOtherArm(line, lines.slice(0, at))) pieces.push([line]);
    else pieces.at(-1)?.push(line);
  });
  return pieces;
};

/**
 * The log of one valve with the arm that is on: a gap that was set or found with another arm says nothing of this one.
 *
 * Source: another arm, another gap: common practice, no published source.
 */
export const lashLogOf = onceEach(
  placeOf,
  (evidence: Evidence, place: ValvePlace): readonly LashEvidence[] => {
    const last = byArm(wholeLogOf(evidence, place)).at(-1) ?? [];
    const on = evidence.seats.find((seat) => placeOf(seat) === placeOf(place))?.armId;
    const arm = last.findLast(({ armId }) => armId !== undefined)?.armId;
    return on !== undefined && arm !== undefined && on !== arm ? [] : last;
  },
);

/** Which of two lines of one day came first, where nobody can tell from the log. */
export const orderQuestions = onceEach(
  placeOf,
  (evidence: Evidence, place: ValvePlace): readonly AssessedQuestion[] =>
    sameDays(asEntered(evidence, place), evidence).map(({ question }) => question),
);
