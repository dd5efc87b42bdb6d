import type { AssessedQuestion } from '../assessment.ts';
import type { AnswerEvidence } from '../evidence.ts';
import { foundBy, passNamed } from './answers.ts';
import { ARM_ELSEWHERE } from './arm-elsewhere.ts';
import { SPRINGS_SWAPPED, saysZero } from './sayings.ts';
import type { SetUpRead } from './set-up-read.ts';

type Found = boolean | undefined;

/** Questions of which an answer finds something else than it says; `said`: what it says by itself. */
const FOUND: ReadonlyMap<string, (answer: AnswerEvidence, said: Found) => Found> = new Map([
  // Asked again by what was read since, it is of other readings than those that were turned round.
  [SPRINGS_SWAPPED, (_: AnswerEvidence, said: Found) => (said === true ? undefined : said)],
  // That it was not moved leaves open which arm or valve it was.
  [ARM_ELSEWHERE, () => undefined],
  // That it was out is what was looked for: nobody asks for it again.
  ['lash-left-in', (answer: AnswerEvidence, said: Found) => (saysZero(answer) ? false : said)],
]);

/** Found on one pass: so it is while that pass is among those that do not fit, else it was put right since. */
function saidBy({ standing }: SetUpRead, { restsOn }: AssessedQuestion, answer: AnswerEvidence): Found {
  const number = passNamed(answer);
  if (number === undefined) return foundBy(answer);
  return standing.some(({ id, pass }) => pass === number && restsOn.includes(id));
}

/** What an answer to a question of a set-up found. */
export function foundOn(own: SetUpRead, question: AssessedQuestion, answer: AnswerEvidence): Found {
  const said = saidBy(own, question, answer);
  const of = FOUND.get(question.code);
  return of === undefined ? said : of(answer, said);
}

/** Questions that an answer to another has answered with it: how far the plunger leans is said with how it stood. */
const BESIDE: ReadonlyMap<string, (answer: AnswerEvidence) => boolean> = new Map([
  ['plunger-tilted', ({ lean }: AnswerEvidence) => lean !== undefined],
]);

/** The answer that was given to it with another, which is not asked once more. */
export function answeredBeside({ code }: AssessedQuestion, { setUp }: SetUpRead): AnswerEvidence | undefined {
  const isOf = BESIDE.get(code);
  return isOf === undefined ? undefined : setUp.answers.findLast(isOf);
}
