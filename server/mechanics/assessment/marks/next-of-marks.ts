import type { AssessedQuestion, NextAction } from '../assessment.ts';
import { answerSaid } from '../common/chosen.ts';
import { askedSaid } from '../common/first-said.ts';
import { lowerFirst, placeOf, valveSubject } from '../common/said.ts';
import type { MarkedValveDetail, MarksDetail } from './detail.ts';

/** What is asked or done first, with the question that it is of. */
interface ToDo {
  readonly valve: MarkedValveDetail;
  readonly said: string;
  readonly turns: boolean;
  readonly question: AssessedQuestion;
}

const toDoOf =
  (questions: readonly AssessedQuestion[]) =>
  (valve: MarkedValveDetail): ToDo[] => {
    const { first } = valve;
    const question = questions.find(({ id }) => id === first?.questionId);
    if (first?.todo !== true || question === undefined) return [];
    return [{ valve, said: first.said, turns: first.turns, question }];
  };

/**
 * What is looked at first, whichever valve it is of: a figure that cannot be and the edge, then whether the rocker sits
 * square, before anything is tried for a width. Common practice, no published source.
 */
const FIRST: readonly string[] = [
  'mark-cannot-be',
  'mark-near-the-edge',
  'mark-close-to-edge',
  'mark-sideways',
];
const rankOf = ({ question: { code } }: ToDo): number =>
  FIRST.includes(code) ? FIRST.indexOf(code) : FIRST.length;

/**
 * What the marks of a valve ask to be changed or inked again, or what an answer about them leads on to; nothing of one that
 * was left as it is.
 */
export function nextOfMarks(
  { valves }: MarksDetail,
  questions: readonly AssessedQuestion[],
): NextAction | undefined {
  const [now] = valves.flatMap(toDoOf(questions)).toSorted((a, b) => rankOf(a) - rankOf(b));
  if (now === undefined) return undefined;
  const { valve, said, turns, question } = now;
  return {
    id: `next:${question.id}`,
    action: question.code,
    step: 'geometry',
    about: valveSubject(valve),
    sentence: `${placeOf(valve)}: ${lowerFirst(said)}`,
    reason: question.answered === undefined ? question.ask : askedSaid(question.ask, answerSaid(question)),
    turns,
  };
}
