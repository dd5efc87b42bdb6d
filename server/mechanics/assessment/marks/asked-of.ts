import { isOfEdge, markQuestions } from '../../tip-mark/mark-questions.ts';
import type { Mark, MarkAsked, MarkContext, MarkQuestion } from '../../tip-mark/types.ts';
import type { AssessedQuestion } from '../assessment.ts';
import { asked } from '../common/asked.ts';
import { valveSubject } from '../common/said.ts';
import type { Evidence, TipMarkEvidence } from '../evidence.ts';
import { type AskedOfMark, MARK_ANSWERS } from './answers.ts';
import { overQuestions } from './length-told.ts';
import { inOneConvention, markOf } from './order.ts';

/** What follows from the lengths. */
const BY_LENGTH: ReadonlySet<MarkAsked> = new Set([
  'mounting',
  'try',
  'compare',
  'heights',
  'sides',
  'contradict',
]);
/** Asked of one mark by itself; the others are asked of all that count. */
const OF_ONE: ReadonlySet<MarkAsked> = new Set(['edge', 'close', 'narrow', 'sideways']);

/** By what it is known, whatever figures it has now. */
const KNOWN_BY: Readonly<Record<MarkAsked, string>> = {
  edge: 'mark off the edge of the stem',
  close: 'mark close to the edge of the stem',
  narrow: 'mark narrower than the least sweep',
  sideways: 'mark off sideways',
  mounting: 'how the rockers are mounted',
  try: 'another setting to try',
  compare: 'a neighbour to compare',
  heights: 'heights for this lift',
  sides: 'valley and exhaust side swapped',
  contradict: 'marks that contradict each other',
  pivot: 'heights of pivot and valve tip',
};

/** How the rockers are mounted is one question of the build, whichever mark raises it. */
export function mountingAsked(found: MarkQuestion, { answers }: Evidence): AssessedQuestion {
  return asked(
    { ...found, weight: 'weak', knownBy: KNOWN_BY.mounting, byLooking: true, restsOn: [] },
    { about: { of: 'build' }, step: 'geometry', answers, choices: MARK_ANSWERS.mounting },
  );
}

/** A question of marks: of one that is named, or of all that count, so that another mark asks it once more. */
export function markAsked(
  evidence: Evidence,
  found: MarkQuestion,
  mark: TipMarkEvidence,
  all: readonly TipMarkEvidence[],
): AskedOfMark {
  if (found.asks === 'mounting') return { asks: 'mounting', question: mountingAsked(found, evidence) };
  const ids = (OF_ONE.has(found.asks) ? [mark] : all).map(({ id }) => id).toSorted();
  const question = asked(
    {
      ...found,
      weight: isOfEdge(found.asks) ? 'strong' : 'weak',
      knownBy: KNOWN_BY[found.asks],
      ...(found.asks === 'close' ? { byLooking: true } : {}),
      restsOn: ids,
    },
    {
      about: valveSubject(mark),
      step: 'geometry',
      among: ids.join('-'),
      answers: evidence.answers,
      choices: MARK_ANSWERS[found.asks],
    },
  );
  return { asks: found.asks, question };
}

/** Marks with their lengths told in one way, as far as it is known over what each was taken. */
function oneWayOf(evidence: Evidence, marks: readonly TipMarkEvidence[]) {
  const unsaid = overQuestions(marks, evidence);
  const oneWay = inOneConvention(
    marks.map((mark) => {
      const chosen = unsaid.find((each) => each.mark === mark)?.chosen;
      return chosen === undefined ? mark : { ...mark, pushrodOver: chosen };
    }),
  );
  return { unsaid, ...oneWay };
}

/** The same marks, each with its length as it compares with the others. */
export const comparable = (
  evidence: Evidence,
  marks: readonly TipMarkEvidence[],
): readonly TipMarkEvidence[] => oneWayOf(evidence, marks).marks;

/** The marks with their lengths told in one way. `waits`: over what one was taken is asked before any length is told. */
export function lengthsOf(evidence: Evidence, marks: readonly TipMarkEvidence[]) {
  const { unsaid, marks: oneWay, ...how } = oneWayOf(evidence, marks);
  const told: readonly Mark[] = oneWay.map((mark) => markOf(mark, evidence.arms));
  return {
    ...how,
    told,
    waits: unsaid.some(({ chosen }) => chosen === undefined),
    questions: unsaid.map(({ question }) => question),
  };
}

/** What is asked of marks, the one that is judged last; nothing of lengths while they wait. */
export function askedOfMarks(
  evidence: Evidence,
  marks: readonly TipMarkEvidence[],
  told: readonly Mark[],
  context: MarkContext,
  waits: boolean,
): AskedOfMark[] {
  const best = marks.at(-1);
  if (best === undefined) return [];
  // What the others ask along the rocker waits until it is square; how it is mounted says what is lined up.
  const square = best.side !== 'sideways' || marks.length === 1;
  return markQuestions(told, context)
    .filter(({ asks }) => !isOfEdge(asks) && !(waits && BY_LENGTH.has(asks)))
    .filter(({ asks }) => square || asks === 'mounting' || !BY_LENGTH.has(asks))
    .map((found) => markAsked(evidence, found, best, marks));
}
