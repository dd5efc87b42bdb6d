import type { AssessedQuestion, NextAction } from '../assessment.ts';
import { lowerFirst, placeOf, valveSubject } from '../common/said.ts';
import type { MarksDetail } from './detail.ts';

/** What the marks of a valve ask to be changed or inked again, of the first one that nobody has answered yet. */
export function nextOfMarks(
  { valves }: MarksDetail,
  questions: readonly AssessedQuestion[],
): NextAction | undefined {
  const open = (ids: readonly string[]): AssessedQuestion | undefined =>
    questions.find(({ id, answered }) => answered === undefined && ids.includes(id));
  const valve = valves.find(({ inShort, questionIds }) => inShort?.todo === true && open(questionIds));
  const question = valve === undefined ? undefined : open(valve.questionIds);
  if (valve?.inShort === undefined || question === undefined) return undefined;
  return {
    id: `next:${question.id}`,
    action: question.code,
    step: 'geometry',
    about: valveSubject(valve),
    sentence: `${placeOf(valve)}: ${lowerFirst(valve.inShort.said)}`,
    reason: question.ask,
    turns: true,
  };
}
