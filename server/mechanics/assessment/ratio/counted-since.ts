import { AT_LOBE } from '../../questions/words.ts';
import { wordsOf } from '../common/asked.ts';
import type { AnswerEvidence, PassEvidence } from '../evidence.ts';
import { codeOf, foundBy, passNamed } from './answers.ts';
import type { SetUpNow } from './set-ups.ts';

/** What was entered because turns were found miscounted was counted: it is the cure of the others, and not apart from them. */
export function countedSince({ answers }: SetUpNow): (pass: PassEvidence) => boolean {
  const found = answers.filter(
    (answer) =>
      codeOf(answer) === 'turn-miscounted' && (foundBy(answer) === true || passNamed(answer) !== undefined),
  );
  const isOfLobe = ({ questionId = '', question }: AnswerEvidence) =>
    questionId.includes(wordsOf(AT_LOBE)) || question.includes(AT_LOBE);
  return ({ kind, line }) =>
    found.some((answer) => answer.line < line && isOfLobe(answer) === (kind === 'lobe-lift'));
}
