import type { AssessedQuestion, NextAction } from '../assessment.ts';
import { isAsked } from '../common/is-asked.ts';
import { lowerFirst, placeOf, valveSubject } from '../common/said.ts';
import type { MarksDetail } from './detail.ts';

/**
 * What the marks of a valve ask to be changed or inked again, or what an answer about them leads on to; nothing of one that
 * was left as it is.
 */
export function nextOfMarks(
  { valves }: MarksDetail,
  questions: readonly AssessedQuestion[],
): NextAction | undefined {
  const ofValve = (ids: readonly string[]): AssessedQuestion | undefined => {
    const own = questions.filter(({ id }) => ids.includes(id));
    return own.find(({ answered }) => answered === undefined) ?? own.at(-1);
  };
  const valve = valves.find(({ inShort, questionIds }) => inShort?.todo === true && ofValve(questionIds));
  const question = valve === undefined ? undefined : ofValve(valve.questionIds);
  if (valve?.inShort === undefined || question === undefined) return undefined;
  return {
    id: `next:${question.id}`,
    action: question.code,
    step: 'geometry',
    about: valveSubject(valve),
    sentence: `${placeOf(valve)}: ${lowerFirst(valve.inShort.said)}`,
    reason: question.ask,
    turns: !isAsked(question),
  };
}
