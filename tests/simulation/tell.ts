import { keptWords } from '../../server/mechanics/assessment/common/asked.ts';
import type { RecordedCall } from './recorded-call.ts';
import { answerOf, putRight } from './states.ts';

/** Most rounds of questions: an answer may raise another one. */
const ROUNDS = 5;

/** Every question of a set-up that the caller can answer is answered under its own id, as a page does it. */
function answerAll({ build, setUps }: RecordedCall): boolean {
  const open = build.assess().questions.flatMap(({ id, code, ask, about, answered }) => {
    const setUp = about.of === 'set-up' ? setUps.find((each) => each.id === about.setUpId) : undefined;
    const answer = setUp === undefined || answered !== undefined ? undefined : answerOf(code, setUp.state);
    return answer === undefined ? [] : [{ id, code, ask, setUpId: setUp?.id, answer }];
  });
  for (const { id, code, ask, setUpId, answer } of open)
    build.answer({ question: keptWords(ask), questionId: id, code, setUpId, ...answer });
  return open.length > 0;
}

/** Tells what was held back, after the readings: state, arm with its mark, card; the last first. */
export function tellTheRest(recorded: RecordedCall): void {
  const { build, telling, setUps } = recorded;
  if (telling === 'at-once') return;
  if (telling === 'wrong-first') {
    recorded.tellCard();
    for (const { id, state } of setUps) build.putRight(id, putRight(state));
    return;
  }
  // Where the mark is known another question stands for that of the spring: the arm is named after the answers.
  for (let round = 0; telling === 'by-answers' && round < ROUNDS && answerAll(recorded); ) round += 1;
  const armId = recorded.nameArm();
  for (const { id, state } of setUps.toReversed())
    build.putRight(id, telling === 'late' ? { ...putRight(state), armId } : { armId });
  recorded.tellCard();
}
