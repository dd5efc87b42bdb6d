import { AT_LOBE } from '../../../questions/words.ts';
import { partsOfId } from '../../common/asked.ts';
import { isSince } from '../../common/since.ts';
import type { AnswerEvidence, PassEvidence } from '../../evidence.ts';
import { codeOf, foundBy, passNamed } from './answers.ts';
import type { SetUpNow } from './set-ups.ts';

/** Asked of the lobe’s lift; an answer that was kept in words alone is known by those of its question. */
const isOfLobe = ({ questionId, question }: AnswerEvidence): boolean =>
  questionId === undefined ? question.includes(AT_LOBE) : partsOfId(questionId)?.among === 'lobe';

/**
 * What was entered because turns were found miscounted was counted: it is the cure of the others, and not apart from them.
 * A pass that was put right is such a one where it is the pass that was found wrong; of another a typing mistake was put
 * right.
 */
export function countedSince({ answers }: SetUpNow): (pass: PassEvidence) => boolean {
  const found = answers.filter(
    (answer) =>
      codeOf(answer) === 'turn-miscounted' && (foundBy(answer) === true || passNamed(answer) !== undefined),
  );
  const isCure = (pass: PassEvidence, answer: AnswerEvidence): boolean => {
    const named = passNamed(answer);
    return isSince(pass, answer) || (pass.line > answer.line && (named ?? pass.pass) === pass.pass);
  };
  return (pass) =>
    found.some((answer) => isCure(pass, answer) && isOfLobe(answer) === (pass.kind === 'lobe-lift'));
}
