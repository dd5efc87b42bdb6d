import { isAnswer } from '../../shared/begins-with.ts';
import { asEntered } from '../../shared/quantities/as-entered.ts';
import { answersTo, NOISE_QUESTIONS, noiseAnswerIn, noiseQuestionOf } from '../../shared/schemas/noise.ts';
import { ALIGNMENTS, LIFTERS, RESTS_ON, SPRINGS } from '../../shared/schemas/words.ts';
import type { AnswerChoice, AssessedQuestion } from '../mechanics/assessment/assessment.ts';
import { choiceOf } from '../mechanics/assessment/common/chosen.ts';
import { placeOf } from '../mechanics/assessment/common/said.ts';
import { MARK_ANSWERS } from '../mechanics/assessment/marks/answers.ts';
import { noiseAsks } from '../mechanics/noise/noise-words.ts';
import type { Answer } from '../records/answers/answers.ts';

/** What was said beside the word that an answer begins with. */
const besides = (answer: string, word: string): string =>
  answer
    .trim()
    .slice(word.length)
    .replace(/^[\s:;,.]+/, '');

const worded = (label: string, own: string, where: string): string =>
  `${label}${where}${own === '' ? '' : `, “${own}”`}`;

/** What was kept with an answer: its amount, and the one valve that it names. */
interface KeptWith {
  readonly value?: { readonly readAs: string } | undefined;
  readonly place?: Answer['place'];
}

/**
 * How the lash was, once that was answered. The amount is told after it from the entry: what is offered leads on to an
 * amount that is still to be said, or goes by the card and the log as they are now.
 */
const LASH: Readonly<Record<string, string>> = {
  'as-card': 'Yes, as on the card',
  'as-logged': 'Yes, as in the log',
  'as-told': 'Yes, as told',
  set: 'Left in',
  zero: 'Taken up to zero',
};

/** What was offered with a figure goes by its label alone where none was kept with the answer. */
function wordsOf({ code, label, takesValue, value }: AnswerChoice, isAmountKept: boolean): string {
  const isWithAmount = takesValue === true || (value !== undefined && isAmountKept);
  return isWithAmount ? (LASH[code] ?? label) : label;
}

/**
 * What was answered in the words that were offered, with what was said beside it and what was kept with it; a code is
 * nothing to read.
 */
export function answeredText(
  question: Pick<AssessedQuestion, 'answers' | 'answered'>,
  { value, place }: KeptWith = {},
): string {
  const said = question.answered?.answer ?? '';
  const where = place === undefined ? '' : `, ${placeOf(place)}`;
  const amount = value === undefined ? '' : `, ${asEntered(value.readAs)}`;
  const choice = choiceOf(question);
  if (choice === undefined) return `${said}${where}${amount}`;
  const own = isAnswer(said, choice.code) ? besides(said, choice.code) : said;
  return `${worded(wordsOf(choice, value !== undefined), own, where)}${amount}`;
}

const FOUND = { found: 'Yes', 'not found': 'Looked: no', 'not-found': 'Looked: no' } as const;

const ABOUT_LASH = /(^|:)lash-(not-said|left-in|setting-not-said)(:|$)/;

/** How a set-up was, in the words that were offered. */
const STATES: Readonly<Record<string, string>> = { ...SPRINGS, ...LIFTERS, ...RESTS_ON, ...ALIGNMENTS };
const ABOUT_STATE =
  /(^|:)(spring-not-said|lifter-(sunk|of-engine|not-said)|plunger-tilted|alignment-not-said|rests-on-not-said)(:|$)/;

const CHOICES_OF_MARKS = Object.values(MARK_ANSWERS).flat();
/**
 * What was answered of tip marks: a mark that was made since has other questions, or none. A word that two of them have
 * with other labels is told as it was kept.
 */
const OF_MARKS: Readonly<Record<string, string>> = Object.fromEntries(
  CHOICES_OF_MARKS.filter(
    ({ code, label }) =>
      !Object.hasOwn(FOUND, code) &&
      CHOICES_OF_MARKS.every((other) => other.code !== code || other.label === label),
  ).map(({ code, label }) => [code, label]),
);
const ABOUT_MARKS =
  /(^|:)(mark-(narrower-than-least|wide|off-centre|sideways|mounting)|length-moves-nothing|marks-(sides-swapped|contradict))(:|$)/;

function wordsFor(about: string): Readonly<Record<string, string>> {
  if (ABOUT_MARKS.test(about)) return { ...FOUND, ...OF_MARKS };
  if (ABOUT_LASH.test(about)) return { ...FOUND, ...LASH };
  return ABOUT_STATE.test(about) ? { ...FOUND, ...STATES } : FOUND;
}

/** The same for the log of a build, which has no offered words beside the answer. */
export function loggedAnswer(
  answer: string,
  questionId: string | undefined,
  code: string | undefined,
): string {
  const noise = noiseQuestionOf(questionId, code);
  const word = noise === undefined ? undefined : noiseAnswerIn(noise, answer);
  if (noise !== undefined && word !== undefined)
    return worded(answersTo(noise)[word] ?? word, besides(answer, word), '');
  const own = wordsFor(code ?? questionId ?? '');
  const [found] = Object.entries(own).filter(([each]) => isAnswer(answer, each.replaceAll(' ', '-')));
  return found === undefined ? `“${answer}”` : worded(found[1], besides(answer, found[0]), '');
}

/** What was asked, in its own words where only its code was kept. */
export function loggedQuestion(
  question: string,
  questionId: string | undefined,
  code: string | undefined,
): string {
  const noise = noiseQuestionOf(questionId, code);
  if (noise === undefined) return question.replaceAll('-', ' ');
  return noiseAsks(noise).includes(question) ? question : NOISE_QUESTIONS[noise].ask;
}
