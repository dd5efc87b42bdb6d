import type { AssessedQuestion, Leads, NextAction } from '../assessment.ts';
import { done } from '../common/answers-of.ts';
import { inDoubt } from '../common/asked.ts';
import { choiceOf } from '../common/chosen.ts';
import { isAsked } from '../common/is-asked.ts';
import { subjectSaid, upperFirst } from '../common/said.ts';
import { isAboutCard } from '../ratio/asked/conditions.ts';

const enterAgain = (restsOn: readonly string[]): Leads => {
  const what = restsOn.length > 1 ? ['those readings', 'them'] : ['that reading', 'it'];
  return {
    todo: `enter ${what[0]} again, or strike ${what[1]} out with the reason.`,
    corrects: true,
    turns: false,
  };
};

/** What its answer leads to, where that found it to be so: what the answer says, else what was asked of is entered again. */
function leadsTo(question: AssessedQuestion): Leads | 'nothing' {
  const { code, restsOn, answers } = question;
  const own = choiceOf(question)?.leadsTo ?? answers.find((each) => each.code === 'found')?.leadsTo;
  if (own !== undefined) return own;
  return isAboutCard({ code, restsOn }) ? done('put the lobe lift of the card right.') : enterAgain(restsOn);
}

/** Whatever is answered, nothing is done for it: the reading stands, and what it is set against is asked elsewhere. */
const leadsNowhere = (question: AssessedQuestion): boolean =>
  question.answers.every((each) => each.leadsTo === 'nothing') ||
  (question.answered?.found === true && leadsTo(question) === 'nothing');

/** The test of a strong doubt; a reading that was found wrong is entered again first. */
export function questionNext(questions: readonly AssessedQuestion[]): NextAction | undefined {
  const open = questions.find((question) => inDoubt(question) && !leadsNowhere(question));
  if (open === undefined) return undefined;
  const found = open.answered?.found === true ? leadsTo(open) : 'nothing';
  const again = found === 'nothing' ? undefined : found;
  const of = open.about.of === 'build' ? '' : `${upperFirst(subjectSaid(open.about))}: `;
  const told = (todo: string): string => (of === '' ? upperFirst(todo) : `${of}${todo}`);
  const atBench = again === undefined ? open.testAtBench : undefined;
  return {
    id: `next:${open.id}`,
    action: open.code,
    step: open.step,
    about: open.about,
    sentence: told(again?.todo ?? open.test),
    ...(atBench === undefined ? {} : { sentenceAtBench: told(atBench) }),
    reason: open.ask,
    ...(again?.corrects === true ? { corrects: open.restsOn } : {}),
    turns: again === undefined ? !isAsked(open) : again.turns,
  };
}

/** Of the sheet: before anything is read or moved that would rest on a row in doubt. */
export const sheetDoubtNext = (questions: readonly AssessedQuestion[]): NextAction | undefined =>
  questionNext(questions.filter(({ step }) => step === 'sheet'));

/**
 * A gap that grew, once its causes are looked into: what is looked at and put right on that valve before the call ends.
 * Answered, it leaves the setting to do.
 */
export const mendNext = (questions: readonly AssessedQuestion[]): NextAction | undefined =>
  questionNext(
    questions
      .filter(({ code, answered }) => code === 'lash-grew' && answered === undefined)
      .map((each): AssessedQuestion => ({ ...each, weight: 'strong' })),
  );

/** What a gap waits for is the answer to a question: its test is what is done, and not that the gap has no word. */
export function heldNext(
  held: NextAction | undefined,
  questions: readonly AssessedQuestion[],
): NextAction | undefined {
  if (held?.settles === undefined) return held;
  const asked = questionNext(
    questions.filter(({ code, answered }) => code === held.settles && answered === undefined),
  );
  return asked === undefined ? held : { ...held, sentence: asked.sentence, turns: asked.turns };
}
