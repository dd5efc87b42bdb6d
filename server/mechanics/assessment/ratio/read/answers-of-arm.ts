import { partsOfId } from '../../common/asked.ts';
import { isAnswerOf } from '../../common/named-late.ts';
import type { AnswerEvidence, ValvePlace } from '../../evidence.ts';
import { codeOf } from './answers.ts';
import { groupKey } from './group-key.ts';

/** Questions of the inference, about all readings of an arm, by the word that a set-up asks the same under. */
const AS_OF_SET_UP: Readonly<Record<string, string>> = {
  'lash-left-in': 'lash-left-in',
  'plunger-tilted': 'plunger-tilted',
  'turn-too-many': 'turn-miscounted',
  'turn-too-few': 'turn-miscounted',
  'hand-read-backwards': 'hand-read-backwards',
};

/**
 * Answers to questions about this arm on this valve, as answers of each of its set-ups. `since`: the line of the first
 * pass of the set-up; what was answered after it, before the arm was named, was of this arm. Of a set-up that was read
 * after an answer nothing was asked yet: it says by itself how it was.
 */
export function answersOfArm(
  setUp: ValvePlace & { readonly armId?: string },
  answers: readonly AnswerEvidence[],
  since: number,
): AnswerEvidence[] {
  const { cylinder, valve, armId } = setUp;
  const before = armId === undefined ? undefined : { key: groupKey({ cylinder, valve }), line: since };
  return answers.flatMap((answer) => {
    const code = AS_OF_SET_UP[codeOf(answer)];
    const { questionId, setUpId } = answer;
    if (code === undefined || questionId === undefined || setUpId !== undefined || answer.line < since)
      return [];
    const asked = partsOfId(questionId);
    if (asked === undefined || asked.code !== codeOf(answer)) return [];
    // The key of an arm has its valve and itself; where none was named the valve alone.
    const of = asked.among === '' ? asked.about : `${asked.about}:${asked.among}`;
    return isAnswerOf(answer, of, groupKey(setUp), before) ? [{ ...answer, code }] : [];
  });
}
