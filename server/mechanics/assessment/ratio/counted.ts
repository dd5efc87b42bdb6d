import { defined } from '../../../../shared/defined.ts';
import type { AssessedQuestion } from '../assessment.ts';
import type { AnswerEvidence } from '../evidence.ts';
import { codeOf, foundBy, passNamed } from './answers.ts';
import type { SetUpRead } from './set-up-read.ts';
import { sinks } from './sinking.ts';

/** Doubts that are about the turns of the dial. */
export const ABOUT_TURNS: ReadonlySet<string> = new Set(['turn-miscounted', 'hand-read-backwards']);

/** Passes whose small hand was read, or whose count was looked at since and found right. */
export function countedPasses(own: SetUpRead, questions: readonly AssessedQuestion[]): ReadonlySet<string> {
  const lookedAt = questions.filter(
    ({ code, answered }) => ABOUT_TURNS.has(code) && answered?.found === false,
  );
  const matched = new Set(lookedAt.map(({ answered }) => answered?.entryId));
  // An answer to a question that the figures no longer raise was about all that was read there.
  const all = own.setUp.answers.some(
    (answer) => ABOUT_TURNS.has(codeOf(answer)) && foundBy(answer) === false && !matched.has(answer.id),
  );
  return new Set([
    ...own.standing
      .filter(({ counted, kind }) => counted || (all && kind === 'valve-lift'))
      .map(({ id }) => id),
    ...lookedAt.flatMap(({ restsOn }) => restsOn),
    ...othersOfNamed(own, questions),
  ]);
}

/** Where a turn was found missing from one pass, the others of the question were looked at and are right. */
function othersOfNamed({ standing }: SetUpRead, questions: readonly AssessedQuestion[]): string[] {
  return questions.flatMap(({ code, answered, restsOn }) => {
    const number = answered === undefined ? undefined : passNamed(answered);
    if (!ABOUT_TURNS.has(code) || number === undefined) return [];
    return standing.filter(({ id, pass }) => pass !== number && restsOn.includes(id)).map(({ id }) => id);
  });
}

/** The word of the question of a count that was looked at. */
export const COUNT_DOES_NOT_FIT = 'count-does-not-fit';

/** Nothing waits for its answer: the reading that tells most is asked for at once. */
function doesNotFit(question: AssessedQuestion, answers: readonly AnswerEvidence[]): AssessedQuestion {
  const { answered: _, ...rest } = question;
  const id = question.id.replace(`:${question.code}:`, `:${COUNT_DOES_NOT_FIT}:`);
  const given = answers.findLast((answer) =>
    answer.questionId === undefined ? codeOf(answer) === COUNT_DOES_NOT_FIT : answer.questionId === id,
  );
  return {
    ...rest,
    id,
    code: COUNT_DOES_NOT_FIT,
    weight: 'weak',
    ask: 'The turns were counted, and the count still does not fit. Was the small hand read at zero too?',
    test: 'Take one more pass, and write the small hand down at zero and at full lift.',
    answers: [
      {
        code: 'found',
        label: 'No, or it stood elsewhere',
        changes: 'The reading is entered again or struck out.',
      },
      { code: 'not-found', label: 'Yes, at zero and at full lift', changes: 'The reading stands.' },
    ],
    ...(given === undefined
      ? {}
      : { answered: { entryId: given.id, answer: given.answer, ...defined({ found: foundBy(given) }) } }),
  };
}

/**
 * A count that was looked at and does not fit is said not to fit: nobody is asked again whether a turn is missing from
 * a pass whose small hand was read.
 */
export function withCountsThatDoNotFit(
  questions: readonly AssessedQuestion[],
  counted: ReadonlySet<string>,
  answers: readonly AnswerEvidence[],
): AssessedQuestion[] {
  const sinking = sinks(questions);
  const all = questions.flatMap((question) => {
    // It is asked of their mean, and of passes that sink there is none: the lifter explains them.
    const ofMean = sinking && question.code === 'hand-read-backwards' && question.answered === undefined;
    if (ofMean) return [];
    const looked = question.restsOn.length > 0 && question.restsOn.every((id) => counted.has(id));
    if (!ABOUT_TURNS.has(question.code) || !looked || question.answered?.found === true) return [question];
    // Which way the hand ran is known with the count: it cannot have been read the wrong way round.
    if (question.code === 'hand-read-backwards') return question.answered === undefined ? [] : [question];
    // Passes that sink are off for a reason that is asked already.
    if (sinking) return question.answered === undefined ? [] : [question];
    const said = doesNotFit(question, answers);
    return question.answered === undefined ? [said] : [question, said];
  });
  return [...new Map(all.map((question) => [question.id, question])).values()];
}
