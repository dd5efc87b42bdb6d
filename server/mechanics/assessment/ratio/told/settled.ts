import type { AssessedQuestion } from '../../assessment.ts';
import { inDoubt } from '../../common/asked.ts';
import { subjectSaid } from '../../common/said.ts';
import type { GroupExplained } from '../compared/explain.ts';
import { restingOn } from '../compared/lacking.ts';
import { wordAgainst } from '../compared/word.ts';

/** Doubts about two springs together, whichever of them was read last. */
const OF_BOTH: ReadonlySet<string> = new Set(['springs-swapped', 'springs-at-different-lash']);

/**
 * Set-ups whose arm was read again since, with nothing lacking: what was wrong with them is put right by that. `alike`:
 * on the same spring, so that nothing rests on the earlier one any more.
 */
export const readAgainSince = (
  explained: readonly GroupExplained[],
): ReadonlyMap<string, { readonly alike: boolean }> =>
  new Map(
    explained.flatMap((each) => {
      const resting = restingOn(each);
      if (resting === undefined || resting.lacks.length > 0) return [];
      const { number, spring } = resting.read.setUp;
      return each.known
        .map(({ read }) => read.setUp)
        .filter((setUp) => setUp.number < number)
        .map((setUp) => [setUp.id, { alike: setUp.spring === spring }] as const);
    }),
  );

/** Doubts about the card, whichever set-up raised them. */
const OF_CARD: ReadonlySet<string> = new Set(['card-ratio']);

/** It stays with its answer, and nobody waits for it any more. */
function noLonger(question: AssessedQuestion): AssessedQuestion {
  const { answered, ...rest } = question;
  if (answered === undefined) return { ...rest, weight: 'weak' };
  const { found: _, ...answer } = answered;
  return { ...rest, weight: 'weak', answered: answer };
}

/** Of the same weak doubt about two springs together, or about one card, the first, or the one that was answered. */
function onceOfBoth(questions: readonly AssessedQuestion[]): AssessedQuestion[] {
  const isOf = (question: AssessedQuestion, other: AssessedQuestion) =>
    (OF_CARD.has(question.code) ||
      (OF_BOTH.has(question.code) && subjectSaid(question.about) === subjectSaid(other.about))) &&
    question.weight === 'weak' &&
    other.code === question.code &&
    other.ask === question.ask;
  return questions.filter((question, index) => {
    const same = questions.filter((other) => isOf(question, other));
    const kept = same.find(({ answered }) => answered !== undefined) ?? same[0];
    return kept === undefined || question.answered !== undefined || questions.indexOf(kept) === index;
  });
}

/**
 * Questions of set-ups as they are asked now: of one that was read again since, none holds anything up, and one that
 * nobody answered is not put any more where the reading has answered it.
 */
export const askedNow = (
  questions: readonly AssessedQuestion[],
  since: ReturnType<typeof readAgainSince>,
): AssessedQuestion[] =>
  onceOfBoth(
    questions.flatMap((question) => {
      const again = question.about.of === 'set-up' ? since.get(question.about.setUpId) : undefined;
      if (again === undefined || OF_BOTH.has(question.code)) return [question];
      // Whether a lifter sinks was answered by reading on one that cannot, on whichever spring.
      const isAnswered = again.alike || question.code === 'falling-passes';
      if (isAnswered && question.answered === undefined) return [];
      return [inDoubt(question) ? noLonger(question) : question];
    }),
  );

/** Guesses that fit nearly any figure: asked where nothing else would explain it. */
const LAST_GUESSES: ReadonlySet<string> = new Set(['unlisted-fault', 'hand-read-backwards']);

/** Without the last guesses, while something that fits better is asked, or was found to be so. */
function withoutLastGuesses(
  questions: readonly AssessedQuestion[],
  { known }: GroupExplained,
): readonly AssessedQuestion[] {
  const isLast = ({ code, weight, answered }: AssessedQuestion) =>
    LAST_GUESSES.has(code) && weight === 'weak' && answered === undefined;
  const ofSetUps = known.flatMap((each) => each.questions).filter(inDoubt);
  const others = questions.filter((each) => !isLast(each) && each.answered?.found !== false);
  return ofSetUps.length + others.length === 0 ? questions : questions.filter((each) => !isLast(each));
}

/** What agrees with what it is held to be is not asked whether its ratio is a listed one. */
export function askedOfArm(explained: GroupExplained): readonly AssessedQuestion[] {
  const [claim] = explained.claims;
  const agrees = claim !== undefined && wordAgainst(explained, claim) === 'agrees';
  const own = explained.questions.filter(
    ({ code, answered }) => !agrees || code !== 'ratio-not-listed' || answered !== undefined,
  );
  return withoutLastGuesses(own, explained);
}
