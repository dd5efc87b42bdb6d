import { sideOfValve } from '../../../../../shared/schemas/words.ts';
import type { AssessedQuestion } from '../../assessment.ts';
import { chosenOf } from '../../common/chosen.ts';
import { isAsked } from '../../common/is-asked.ts';
import { placeOf, subjectSaid, upperFirst } from '../../common/said.ts';
import { LASH_OF_ONE } from '../asked/lash-of-one.ts';
import type { SheetOddDetail, SheetSwapDetail } from '../rows/detail.ts';
import { LASH_OF_SHEET } from '../rows/said-of-sheet.ts';
import type { Said } from './said.ts';

/** A pass apart from the others; a doubt of one figure is settled by reading that valve again, which is asked anyway. */
const APART = 'pass-apart';

/** That all of them are off alike: asked before any guess at one slip that would make it. */
const WHOLE: ReadonlySet<string> = new Set(['side-off', 'group-off', 'lobes-off-card']);

const isWhole = ({ code }: AssessedQuestion): boolean => WHOLE.has(code);

/** Doubts that reading one valve again leaves open: of a whole column, and of passes that do not go together. */
export const openDoubts = (questions: readonly AssessedQuestion[]): AssessedQuestion[] =>
  questions
    .filter(
      ({ step, code, about, answered }) =>
        step === 'sheet' &&
        answered === undefined &&
        (about.of === 'side' || code === APART || WHOLE.has(code)),
    )
    .toSorted((a, b) => Number(isWhole(b)) - Number(isWhole(a)));

const isAbout = ({ about, code }: AssessedQuestion, odd: SheetOddDetail): boolean => {
  if (about.of === 'valve') return about.cylinder === odd.cylinder && about.valve === odd.valve;
  if (about.of === 'side') return about.valve === sideOfValve(odd.valve);
  return WHOLE.has(code);
};

/** What is asked of the lash of a valve that is low by just that. */
export const lashFirst = (
  odd: SheetOddDetail,
  questions: readonly AssessedQuestion[],
): readonly AssessedQuestion[] =>
  questions.filter(
    (question) => question.code === LASH_OF_ONE && question.about.of === 'valve' && isAbout(question, odd),
  );

/** The same of what stayed on its valve: it takes a word, and no part has to move for it. */
export const lashOfSwap = (
  { lashAt }: SheetSwapDetail,
  questions: readonly AssessedQuestion[],
): readonly AssessedQuestion[] => {
  if (lashAt === undefined) return [];
  const open = questions.filter(({ answered }) => answered === undefined);
  const ofValve = open.filter(
    ({ code, about }) => code === LASH_OF_ONE && about.of === 'valve' && placeOf(about) === placeOf(lashAt),
  );
  return ofValve.length > 0
    ? ofValve
    : open.filter(({ code, step }) => code === LASH_OF_SHEET && step === 'sheet');
};

/** What was answered of all of them, and not done yet. */
const ANSWERED: Readonly<Record<string, Pick<Said, 'action' | 'sentence' | 'step' | 'turns'>>> = {
  'side-off set-up': {
    action: 'read-again',
    sentence: 'Put right what was wrong, read all of them again, and strike the others out with the reason.',
  },
  'group-off lash': {
    action: 'read-again',
    sentence: 'Read those again at zero lash, and strike the others out with the reason.',
  },
  'group-off set-up': {
    action: 'read-again',
    sentence: 'Read those again as the others were read, and strike out what was read otherwise.',
  },
  'lobes-off-card dial': {
    action: 'read-again',
    sentence: 'Read the lobes again, small hand first, and strike the others out with the reason.',
  },
  'lobes-off-card other-card': {
    action: 'card-lobe-lift',
    sentence: 'Put the lobe lifts of the card right: they are another cam’s.',
    step: 'cam',
    turns: false,
  },
};

/** Of all valves of a side at once: what was answered is done, and what was not is asked, before a mark is read for it. */
export const ofWhole = (questions: readonly AssessedQuestion[]): Said[] =>
  questions
    .filter((question) => question.step === 'sheet' && isWhole(question))
    .flatMap((question) => {
      if (question.answered === undefined) return ofDoubt(question);
      const todo = ANSWERED[`${question.code} ${chosenOf(question) ?? ''}`];
      return todo === undefined ? [] : { ...todo, about: question.about, reason: question.ask };
    });

/** What settles a doubt. */
export const ofDoubt = (question: AssessedQuestion): Said => ({
  action: question.code,
  about: question.about,
  sentence:
    question.about.of === 'build'
      ? question.test
      : `${upperFirst(subjectSaid(question.about))}: ${question.test}`,
  reason: question.ask,
  ...(isAsked(question) ? { turns: false as const } : {}),
});

/** Before anything rests on an odd valve, what its column and its passes are asked. */
export const doubtsOf = (odd: SheetOddDetail, doubts: readonly AssessedQuestion[]): Said[] =>
  doubts.filter((question) => isAbout(question, odd)).map(ofDoubt);
