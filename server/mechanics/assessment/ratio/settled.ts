import type { AssessedQuestion } from '../assessment.ts';
import { inDoubt } from '../common/asked.ts';
import type { GroupExplained } from './explain.ts';
import { restingOn } from './lacking.ts';
import { wordAgainst } from './word.ts';

/** Doubts about two springs together, whichever of them was read last. */
const OF_BOTH: ReadonlySet<string> = new Set(['springs-swapped', 'springs-at-different-lash']);

/** Set-ups whose arm was read again since, with nothing lacking: what was wrong with them is put right by that. */
export const readAgainSince = (explained: readonly GroupExplained[]): ReadonlySet<string> =>
  new Set(
    explained
      .flatMap((each) => {
        const resting = restingOn(each);
        if (resting === undefined || resting.lacks.length > 0) return [];
        const { number } = resting.read.setUp;
        return each.known.map(({ read }) => read.setUp).filter((setUp) => setUp.number < number);
      })
      .map(({ id }) => id),
  );

/** It stays with its answer, and nobody waits for it any more. */
function noLonger(question: AssessedQuestion): AssessedQuestion {
  const { answered, ...rest } = question;
  if (answered === undefined) return { ...rest, weight: 'weak' };
  const { found: _, ...answer } = answered;
  return { ...rest, weight: 'weak', answered: answer };
}

/** Questions of set-ups as they are asked now: of one that was read again since, none holds anything up. */
export const askedNow = (
  questions: readonly AssessedQuestion[],
  since: ReadonlySet<string>,
): AssessedQuestion[] =>
  questions.map((question) =>
    question.about.of === 'set-up' &&
    since.has(question.about.setUpId) &&
    inDoubt(question) &&
    !OF_BOTH.has(question.code)
      ? noLonger(question)
      : question,
  );

/** What agrees with what it is held to be is not asked whether its ratio is a listed one. */
export function askedOfArm(explained: GroupExplained): readonly AssessedQuestion[] {
  const [claim] = explained.claims;
  const agrees = claim !== undefined && wordAgainst(explained, claim) === 'agrees';
  return explained.questions.filter(
    ({ code, answered }) => !agrees || code !== 'ratio-not-listed' || answered !== undefined,
  );
}
