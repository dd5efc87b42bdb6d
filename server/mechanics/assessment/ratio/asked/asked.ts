import { defined } from '../../../../../shared/defined.ts';
import { formatNumber } from '../../../../../shared/quantities/format.ts';
import { isDial } from '../../../kit/lift-tools.ts';
import { DEG } from '../../../kit/si.ts';
import { digitsSwapped } from '../../../questions/digits-swapped.ts';
import { questionsFor } from '../../../questions/questions.ts';
import { defaultTolerances } from '../../../questions/tolerances.ts';
import type { AssessedQuestion, Subject } from '../../assessment.ts';
import { asked } from '../../common/asked.ts';
import { inches } from '../../common/said.ts';
import type { AnswerEvidence, Evidence } from '../../evidence.ts';
import { answerTo, codeOf } from '../read/answers.ts';
import { armElsewhereAsked } from '../read/arm-elsewhere.ts';
import { SPRINGS_SWAPPED, withSayings } from '../read/sayings.ts';
import type { SetUpRead } from '../read/set-up-read.ts';
import { setUpSubject } from '../read/set-ups.ts';
import { isAlikeElsewhere, OF_ONE_READING } from './alike-elsewhere.ts';
import { choicesOf, type SetUpDoubt } from './choices.ts';
import { answeredBeside, foundOn } from './found-on.ts';
import { questionInput } from './question-input.ts';
import { isSlip, isToldTwice } from './told-by-swap.ts';

/** Doubts that only a dial and its plunger raise. */
const OF_A_DIAL: ReadonlySet<string> = new Set([
  'turn-miscounted',
  'hand-read-backwards',
  'plunger-tilted',
  'out-of-travel',
  'zero-not-returned',
  'alignment-not-said',
  'rests-on-not-said',
  'copied-reading',
  'falling-passes',
  'drifting-passes',
]);

/** `12 deg` */
const degrees = (lean: number): string => `${formatNumber(lean / DEG, 0)} deg`;

/** The questions of a set-up, each with the answer it has. */
function questionsOf(evidence: Evidence, own: SetUpRead, all: readonly SetUpRead[]): AssessedQuestion[] {
  const about = setUpSubject(own.setUp);
  const twice = isToldTwice(evidence, own, all);
  const input = questionInput(evidence, own, all);
  // A weak one the inference weighs beside all else that may have made the figure.
  const digits = digitsSwapped(input, defaultTolerances).filter(({ weight }) => weight === 'strong');
  const ofReadings = [...questionsFor(input), ...digits].filter(
    ({ code }) =>
      (isDial(own.setUp.tool) || !OF_A_DIAL.has(code)) && !(twice && isSlip(code, own.setUp.lash === 'zero')),
  );
  const doubts: SetUpDoubt[] = [...armElsewhereAsked(evidence, own), ...ofReadings];
  const questions = doubts.map((doubt) =>
    asked(doubt, {
      about,
      step: 'ratio',
      ...defined({ among: doubt.of }),
      answers: [],
      choices: choicesOf(evidence, own, doubt),
    }),
  );
  // Answered, it stays with its answer; else a swap that was read has settled it.
  const settled = isAlikeElsewhere(own, all);
  const isOpen = (question: AssessedQuestion) =>
    !settled ||
    !OF_ONE_READING.has(question.code) ||
    answerTo(question, questions, own.setUp.answers) !== undefined;
  return questions.filter(isOpen).map((question) => {
    const answer = answerTo(question, questions, own.setUp.answers) ?? answeredBeside(question, own);
    if (answer === undefined) return question;
    const found = foundOn(own, question, answer);
    const { id: entryId, value, lean } = answer;
    const text = `${answer.answer}${value === undefined ? '' : `, ${inches(value)}`}${lean === undefined ? '' : `, ${degrees(lean)}`}`;
    return {
      ...question,
      answered: { entryId, answer: text, ...defined({ found }) },
    };
  });
}

/** What is known now raises it no more: it stays with its answer, and nothing is in doubt by it. */
function noLongerRaised(question: AssessedQuestion, about: Subject): AssessedQuestion {
  const { answered, ...rest } = question;
  if (answered === undefined) return question;
  const { entryId, answer } = answered;
  return { ...rest, about, weight: 'weak', answered: { entryId, answer } };
}

/**
 * A set-up as it was known when an answer was given: what was said before it, and not what came of it, nor of an earlier
 * answer to the same.
 */
function knownBefore(evidence: Evidence, own: SetUpRead, answer: AnswerEvidence): SetUpRead {
  const said = evidence.setUps.find(({ id }) => id === own.setUp.id);
  if (said === undefined) return own;
  const earlier = <Each extends { readonly line: number }>(all: readonly Each[]) =>
    all.filter((each) => each.line < answer.line);
  const { armId, armTaken, answers } = own.setUp;
  const others = answers.filter((each) => codeOf(each) !== codeOf(answer));
  const then = withSayings(said, earlier(evidence.statements), earlier(others));
  // An arm that was put right by an answer is named otherwise before it.
  return { ...own, setUp: { ...then, ...defined({ armId: then.armId ?? armId }), armTaken, answers } };
}

/** Answers that are said of another set-up too: which spring each was read on. */
const OF_PAIR: ReadonlySet<string> = new Set([SPRINGS_SWAPPED]);

/** The same of every set-up that the answer was said of. */
const allBefore = (
  evidence: Evidence,
  all: readonly SetUpRead[],
  answer: AnswerEvidence,
): readonly SetUpRead[] =>
  OF_PAIR.has(codeOf(answer))
    ? all.map((each) =>
        each.setUp.answers.some(({ id }) => id === answer.id) ? knownBefore(evidence, each, answer) : each,
      )
    : all;

/** What an answer found to be so, as its set-up was known before it. */
export const foundIn = (
  evidence: Evidence,
  own: SetUpRead,
  all: readonly SetUpRead[],
  answer: AnswerEvidence,
): AssessedQuestion[] =>
  questionsOf(evidence, knownBefore(evidence, own, answer), all).filter(
    ({ answered }) => answered?.entryId === answer.id && answered.found === true,
  );

/**
 * What a set-up is asked as it is known now. A question that its own answer has settled is kept with the answer, though
 * it would not be asked any more.
 */
export function questionsOfSetUp(
  evidence: Evidence,
  own: SetUpRead,
  all: readonly SetUpRead[],
): AssessedQuestion[] {
  const now = questionsOf(evidence, own, all);
  const told = new Set(
    own.setUp.answers
      .filter((answer) =>
        now.some(({ code, answered }) => answered?.entryId === answer.id && code === codeOf(answer)),
      )
      .map(({ id }) => id),
  );
  const settled = own.setUp.answers
    .filter(({ id }) => !told.has(id))
    .flatMap((answer) =>
      questionsOf(evidence, knownBefore(evidence, own, answer), allBefore(evidence, all, answer)).filter(
        ({ answered }) => answered?.entryId === answer.id,
      ),
    );
  const about = setUpSubject(own.setUp);
  const open = new Set(now.map(({ id }) => id));
  const others = new Map(settled.map((question) => [question.id, noLongerRaised(question, about)]));
  return [...now, ...[...others.values()].filter(({ id }) => !open.has(id))];
}
