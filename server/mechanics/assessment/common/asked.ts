import { isAnswer } from '../../../../shared/begins-with.ts';
import { defined } from '../../../../shared/defined.ts';
import type { StepName } from '../../../../shared/steps.ts';
import type { AssessedQuestion, Subject } from '../assessment.ts';
import type { AnswerEvidence } from '../evidence.ts';
import { ended } from './first-said.ts';
import { keyOf, upperFirst } from './said.ts';

/** What the id of a question has of it, beside its words. */
export interface AskedId {
  readonly code: string;
  /** The key of what it is about: `build`, `intake`, `5-intake`. */
  readonly about: string;
  /** What tells it from another of the same word: the spring, the valves. */
  readonly among: string;
}

/** The parts of the id that `asked` made; what it is among is empty where the id has none. */
export function partsOfId(questionId: string | undefined): AskedId | undefined {
  const [start, code, about, ...rest] = (questionId ?? '').split(':');
  if (start !== 'question' || code === undefined || about === undefined) return undefined;
  return { code, about, among: rest.slice(0, -1).join(':') };
}

/** Two answers to one question: under its id, else in its own words. */
export const isOfSame = (one: AnswerEvidence, other: AnswerEvidence): boolean =>
  one.setUpId === other.setUpId &&
  (one.questionId === undefined
    ? other.questionId === undefined && one.question === other.question
    : one.questionId === other.questionId);

/** Of the answers to one question the last: given again, it puts the one before it right. */
export const lastAnswers = (answers: readonly AnswerEvidence[]): AnswerEvidence[] =>
  answers.filter((one) => !answers.some((other) => other.line > one.line && isOfSame(one, other)));

/** A doubt as the mechanics put it. */
export interface Doubt {
  readonly code: string;
  readonly weight: 'strong' | 'weak';
  readonly ask: string;
  /** What its id is made of, where figures or names in the question change with later readings. */
  readonly knownBy?: string;
  readonly size?: string;
  readonly test: string;
  readonly testAtBench?: string;
  readonly byLooking?: boolean;
  readonly restsOn: readonly string[];
}

/** How a question was known before its arm was named, and the line of the first entry that it is about. */
export interface KnownBefore {
  readonly among?: string;
  readonly line: number;
}

/** `among`: what told it from others while the arm was not named; nothing where no arm is, or nothing was read. */
export const beforeNamed = (
  armId: string | undefined,
  entries: readonly { readonly line: number }[],
  among?: string,
): { readonly before?: KnownBefore } =>
  armId === undefined || entries.length === 0
    ? {}
    : { before: { ...defined({ among }), line: Math.min(...entries.map(({ line }) => line)) } };

interface AskedOf {
  readonly about: Subject;
  readonly step: StepName;
  /** What else tells it from another question of the same word, e.g. the spring. */
  readonly among?: string;
  /** Which arm it is was said after it was asked: what was answered till then is answered. */
  readonly before?: KnownBefore;
  readonly answers: readonly AnswerEvidence[];
  /** What may be answered: `answersOf` has what is asked of readings. */
  readonly choices: AssessedQuestion['answers'];
}

/** Words by which something is known, whatever its figures are told in: a call may change its units at any time. */
export const inAnyUnits = (words: string): string =>
  words.replaceAll(/ \(as typed [^)]*\)/g, '').replaceAll(/(\d) mm\b/g, '$1 in');

/** The words of a question without its figures: two doubts of one word are told apart by what they ask. */
export const wordsOf = (ask: string): string =>
  inAnyUnits(ask)
    .toLowerCase()
    .replace(/[^a-z ]/g, '')
    .trim()
    .split(/ +/)
    .join('-');

const LONGEST = 100;
/** Words cut to what is read at a glance; the record once held no more of a question. */
export const keptWords = (text: string): string =>
  text.length <= LONGEST ? text : `${text.slice(0, LONGEST - 1)}…`;

/** Whether a question was kept in these words, in full or as it was cut once. */
export const isAskedAs = (kept: string, ask: string): boolean => kept === ask || kept === keptWords(ask);

/** The answer to a question: under its id, else in its own words. Of several the last on the record counts. */
function answerTo(
  question: { readonly id: string; readonly ask: string; readonly before?: { id: string; line: number } },
  answers: readonly AnswerEvidence[],
): AnswerEvidence | undefined {
  const fitting = answers.filter((answer) =>
    answer.questionId === undefined
      ? answer.setUpId === undefined && isAskedAs(answer.question, question.ask)
      : answer.questionId === question.id ||
        (answer.questionId === question.before?.id && answer.line > question.before.line),
  );
  return fitting.toSorted((a, b) => a.line - b.line).at(-1);
}

const YES_OR_NO: ReadonlySet<string> = new Set(['found', 'not-found']);

/**
 * Whether it was found so: by the answer that was chosen, else as it was said beside it, where the question has a yes or
 * no. A word of its own is neither, whatever was sent beside it.
 */
function foundOf(
  { answer, found }: AnswerEvidence,
  choices: AssessedQuestion['answers'],
): boolean | undefined {
  const has = (word: string) => choices.some(({ code }) => code === word);
  const said = (word: string) => isAnswer(answer, word) && has(word);
  if (choices.some(({ code }) => !YES_OR_NO.has(code) && isAnswer(answer, code))) return undefined;
  if (found !== undefined) return has(found ? 'found' : 'not-found') ? found : undefined;
  return said('found') ? true : said('not-found') ? false : undefined;
}

/** A question with words of its own is answered by one of them, and by nothing else. */
export function isAnswered(
  { answer, found }: Pick<AnswerEvidence, 'answer' | 'found'>,
  choices: AssessedQuestion['answers'],
): boolean {
  return (
    choices.some(({ code }) => isAnswer(answer, code)) ||
    (found !== undefined && choices.some(({ code }) => code === (found ? 'found' : 'not-found'))) ||
    choices.every(({ code }) => YES_OR_NO.has(code))
  );
}

/** A doubt of the mechanics as the assessment has it: about something, with its answers and the one given. */
export function asked(
  doubt: Doubt,
  { about, step, among, before, answers, choices }: AskedOf,
): AssessedQuestion {
  const idAmong = (others: string | undefined) =>
    [
      'question',
      doubt.code,
      keyOf(about),
      ...(others === undefined ? [] : [others]),
      wordsOf(doubt.knownBy ?? doubt.ask),
    ].join(':');
  const id = idAmong(among);
  const said = answerTo(
    {
      id,
      ask: doubt.ask,
      ...(before === undefined ? {} : { before: { id: idAmong(before.among), line: before.line } }),
    },
    answers,
  );
  const own = choices;
  const answer = said !== undefined && isAnswered(said, own) ? said : undefined;
  return {
    id,
    code: doubt.code,
    about,
    step,
    weight: doubt.weight,
    ask: doubt.ask,
    ...defined({ size: doubt.size }),
    test: upperFirst(ended(doubt.test)),
    ...defined({ testAtBench: doubt.testAtBench }),
    ...defined({ byLooking: doubt.byLooking }),
    answers: own,
    ...(answer === undefined
      ? {}
      : {
          answered: {
            entryId: answer.id,
            answer: answer.answer,
            ...defined({ found: foundOf(answer, own) }),
          },
        }),
    restsOn: [...doubt.restsOn].sort(),
  };
}

/** Strong and not answered, or answered that it was so, however weak: either way the reading does not stand. */
export const inDoubt = ({ weight, answered }: AssessedQuestion): boolean =>
  answered?.found === true || (weight === 'strong' && answered?.found !== false);
