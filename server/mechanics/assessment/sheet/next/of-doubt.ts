import { sideOfValve } from '../../../../../shared/schemas/words.ts';
import type { AssessedQuestion } from '../../assessment.ts';
import { subjectSaid, upperFirst } from '../../common/said.ts';
import { isAsked } from '../../next/is-asked.ts';
import type { SheetOddDetail } from '../detail.ts';
import type { Said } from './said.ts';

/** A pass apart from its fellows; a doubt of one figure is settled by reading that valve again, which is asked anyway. */
const APART = 'pass-apart';

/** Doubts that reading one valve again leaves open: of a whole column, and of passes that do not go together. */
export const openDoubts = (questions: readonly AssessedQuestion[]): AssessedQuestion[] =>
  questions.filter(
    ({ step, code, about, answered }) =>
      step === 'sheet' && answered === undefined && (about.of === 'side' || code === APART),
  );

const isAbout = ({ about }: AssessedQuestion, odd: SheetOddDetail): boolean =>
  about.of === 'valve'
    ? about.cylinder === odd.cylinder && about.valve === odd.valve
    : about.of === 'side' && about.valve === sideOfValve(odd.valve);

/** What settles a doubt. */
export const ofDoubt = (question: AssessedQuestion): Said => ({
  action: question.code,
  about: question.about,
  sentence: `${upperFirst(subjectSaid(question.about))}: ${question.test}`,
  reason: question.ask,
  ...(isAsked(question) ? { turns: false as const } : {}),
});

/** Before anything rests on an odd valve, what its column and its passes are asked. */
export const doubtsOf = (odd: SheetOddDetail, doubts: readonly AssessedQuestion[]): Said[] =>
  doubts.filter((question) => isAbout(question, odd)).map(ofDoubt);
