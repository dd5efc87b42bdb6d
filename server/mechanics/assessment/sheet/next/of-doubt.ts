import type { AssessedQuestion } from '../../assessment.ts';
import { subjectSaid, upperFirst } from '../../common/said.ts';
import { isAsked } from '../../next/is-asked.ts';
import type { SheetOddDetail } from '../detail.ts';
import type { Said } from './said.ts';

/** Questions that have a place of their own in the order: after a swap, or behind a stop. */
const NOT_OF_READINGS: ReadonlySet<string> = new Set([
  'pushrod-or-valve',
  'tip-or-stud-height',
  'lobe-worn',
  'gap-short',
]);

/** Doubts of the sheet that nobody has looked at, too weak to keep a row from its siblings. */
export const openDoubts = (questions: readonly AssessedQuestion[]): AssessedQuestion[] =>
  questions.filter(
    ({ step, code, answered }) => step === 'sheet' && answered === undefined && !NOT_OF_READINGS.has(code),
  );

const isAbout = ({ about }: AssessedQuestion, odd: SheetOddDetail): boolean =>
  about.of === 'valve'
    ? about.cylinder === odd.cylinder && about.valve === odd.valve
    : about.of === 'side' && about.valve === odd.valve;

/** What settles a doubt. */
export const ofDoubt = (question: AssessedQuestion): Said => ({
  action: question.code,
  about: question.about,
  sentence: `${upperFirst(subjectSaid(question.about))}: ${question.test}`,
  reason: question.ask,
  ...(isAsked(question) ? { turns: false as const } : {}),
});

/** Before anything rests on an odd valve, what its own readings and those of its column are asked. */
export const doubtsOf = (odd: SheetOddDetail, doubts: readonly AssessedQuestion[]): Said[] =>
  doubts.filter((question) => isAbout(question, odd)).map(ofDoubt);
