import { isDial } from '../../../kit/lift-tools.ts';
import type { AssessedQuestion } from '../../assessment.ts';
import { inDoubt } from '../../common/asked.ts';
import { answerSaid } from '../../common/chosen.ts';
import { askedSaid } from '../../common/first-said.ts';
import { codeOf, foundBy, passNamed } from '../read/answers.ts';
import { answerLack, cardLobeLack, eachOnce, type RatioLack, soldAsLack } from '../read/lack.ts';
import { againOf } from '../read/passes-repeat.ts';
import type { SetUpRead } from '../read/set-up-read.ts';
import type { SetUpNow } from '../read/set-ups.ts';
import { askedBefore } from './asked-before.ts';
import { ABOUT_TURNS } from './counted.ts';
import { sinks, sunkLacks } from './sinking.ts';

/** Doubts about the card or a sum, not about what was read. */
const NOT_ABOUT_READINGS: ReadonlySet<string> = new Set([
  'card-ratio',
  'card-against-itself',
  'lash-formula',
  'stated-not-read',
  'springs-at-different-lash',
  'spring-mixed',
]);

const OF_UNIT: ReadonlySet<string> = new Set(['unit-mixed', 'decimal-slip']);

/** The entries were read back, and one was wrong. */
const wasReadBackWrong = ({ setUp }: SetUpRead): boolean =>
  setUp.answers
    .filter((answer) => codeOf(answer) === 'read-back')
    .flatMap((answer) => foundBy(answer) ?? [])
    .at(-1) === true;

const lackIf = (is: boolean, lack: RatioLack): RatioLack[] => (is ? [lack] : []);

/** The lift is short by a lash on record: that is asked, in place of how the lash was. */
const asksForLash = (questions: readonly AssessedQuestion[]): boolean =>
  questions.some((question) => question.code === 'lash-left-in' && inDoubt(question));

/**
 * A flat face of the retainer, not a lock, a step or a slope (common practice, no published source); the valve’s tip goes
 * straight with it too.
 */
const isElsewhere = (restsOn: SetUpNow['restsOn']): boolean =>
  restsOn === 'retainer-edge' || restsOn === 'spring-seat';

function stateLacks({ setUp }: SetUpRead, questions: readonly AssessedQuestion[]): RatioLack[] {
  const { spring, lifter, lash, lashSetting, alignment, restsOn, tool, lobeSource } = setUp;
  return [
    ...lackIf(spring === 'not-said', { code: 'which-spring' }),
    ...lackIf(lifter === 'not-said', { code: 'which-lifter' }),
    ...lackIf(lash === 'not-said' && !asksForLash(questions), { code: 'lash-not-said' }),
    ...lackIf(lash === 'set', { code: lashSetting === undefined ? 'lash-in-unknown' : 'lash-in-known' }),
    ...lackIf(tool === 'guess', { code: 'guessed', lift: 'valve' }),
    ...lackIf(lobeSource === 'guess', { code: 'guessed', lift: 'lobe' }),
    ...lackIf(alignment === 'leaning' && isDial(tool), { code: 'plunger-leans' }),
    ...lackIf(isElsewhere(restsOn) && isDial(tool), { code: 'rests-elsewhere' }),
  ];
}

/** So many passes that agree outweigh one that was looked at and does not. */
const ENOUGH_OTHERS = 3;

/** A pass that stands apart is out of the figures, but only a person strikes it out. */
function apartLacks({ setUp, valve, lobe }: SetUpRead, questions: readonly AssessedQuestion[]): RatioLack[] {
  const all = [...valve.aside, ...(lobe.from === undefined ? lobe.passes.aside : [])];
  const looked = (id: string, found: boolean) =>
    questions.some(
      ({ code, restsOn, answered }) =>
        ABOUT_TURNS.has(code) && restsOn.includes(id) && answered?.found === found,
    );
  return all.map(({ pass, why, code }): RatioLack => {
    const again = (also: string) => againOf([pass], code === 'turn-apart', `it ${why}${also}`);
    if (code !== 'turn-apart') return again('');
    if (looked(pass.id, true)) return again(', and that was found to be so');
    if (!looked(pass.id, false)) return again('');
    const isLobe = pass.kind === 'lobe-lift';
    // Counted, it is as good as the others: one more pass that is counted says which of them are right.
    if ((isLobe ? lobe.passes : valve).used.length >= ENOUGH_OTHERS)
      return again(', though its count was looked at');
    return {
      code: 'one-more-pass',
      lift: isLobe ? 'lobe' : 'valve',
      smallHand: isDial(setUp.tool),
      why: `pass ${pass.pass} ${why}, though its count was looked at`,
    };
  });
}

/** Answers to these say how it was read; what that lacks is said of the state. */
const OF_STATE: ReadonlySet<string> = new Set([
  'spring-not-said',
  'lifter-not-said',
  'lash-not-said',
  'lash-setting-not-said',
  'alignment-not-said',
  'rests-on-not-said',
  'lifter-of-engine',
]);

/** A doubt that is open on what the word would rest on, and that no other lack has named already. */
function isOpen(question: AssessedQuestion, { setUp, valve, lobe }: SetUpRead): boolean {
  const foundSo = question.answered?.found === true && !OF_STATE.has(question.code);
  if ((!inDoubt(question) && !foundSo) || NOT_ABOUT_READINGS.has(question.code)) return false;
  if (question.code === 'lifter-sunk') return false;
  // Passes that fall are a lack of their own.
  if (question.code === 'falling-passes' && question.weight === 'strong') return false;
  // The count was looked at: the inference weighs what is left, until what it was is found.
  if (question.code === 'count-does-not-fit' && question.answered?.found !== true) return false;
  if (question.code === 'lash-left-in' && setUp.lash === 'set') return false;
  if (question.code === 'plunger-tilted' && setUp.alignment === 'leaning') return false;
  const named = [...valve.aside, ...lobe.passes.aside].map(({ pass }) => pass.id);
  return question.restsOn.length === 0 || !question.restsOn.every((id) => named.includes(id));
}

/** Doubts about what the card says: found to be so, the card is put right and the passes stand. */
const ABOUT_CARD: ReadonlySet<string> = new Set([
  'wrong-card-row',
  'card-not-this-lobe',
  'valve-lift-as-lobe',
]);

/** Doubts that are of a reading where they rest on one, and else of the card. */
const OF_CARD_OR_READING: ReadonlySet<string> = new Set(['gross-lift-as-lobe', 'slip', 'unit-or-decimal']);

/** Of the card too where a question that may be about a reading rests on none. */
export const isAboutCard = ({ code, restsOn }: Pick<AssessedQuestion, 'code' | 'restsOn'>): boolean =>
  ABOUT_CARD.has(code) || (OF_CARD_OR_READING.has(code) && restsOn.length === 0);

/** What the card has of the lobe is wrong; which valve it is, is not in question. */
export const isOfCardLobe = (question: Pick<AssessedQuestion, 'code' | 'restsOn'>): boolean =>
  isAboutCard(question) && question.code !== 'wrong-card-row';

/** A doubt that was found to be so. */
export function foundLack(question: AssessedQuestion, own: SetUpRead): RatioLack {
  const { code, ask, restsOn, answered } = question;
  const pass = answered === undefined ? undefined : passNamed(answered);
  // With a caliper again it would come out the same.
  const how = code === 'caliper-on-lobe' ? '; at the lifter it is read right' : '';
  const why = `${askedSaid(ask, answerSaid(question))}${how}`;
  const again = own.standing.filter(({ id }) => restsOn.includes(id));
  // The number alone is that of a pass of each lift: those that were asked about.
  if (pass !== undefined)
    return againOf(
      again.filter((each) => each.pass === pass),
      false,
      why,
    );
  if (isAboutCard(question)) return cardLobeLack(question);
  return code === 'ratio-not-listed' ? soldAsLack(question) : againOf(again, false, why);
}

/** Strong doubts that nobody has answered, and all that were found to be so while the reading still stands. */
export const doubtsOf = (own: SetUpRead, questions: readonly AssessedQuestion[]): RatioLack[] =>
  questions
    .filter((each) => isOpen(each, own))
    .map((question) => (question.answered?.found === true ? foundLack(question, own) : answerLack(question)));

/** Passes in another unit lie apart by as much: whether they are is asked first. */
const isOtherUnit = ({ valve }: SetUpRead, questions: readonly AssessedQuestion[]): boolean =>
  questions.some(
    (question) =>
      OF_UNIT.has(question.code) &&
      inDoubt(question) &&
      valve.used.some(({ id }) => question.restsOn.includes(id)),
  );

/** What must be known or done before a word stands against what was read in this set-up, its doubts aside. */
export function lacksOf(own: SetUpRead, questions: readonly AssessedQuestion[]): RatioLack[] {
  const sinking = sinks(questions);
  const all = eachOnce([
    ...stateLacks(own, questions),
    ...lackIf(own.valve.used.length === 0, { code: 'no-pass', lift: 'valve' }),
    ...lackIf(wasReadBackWrong(own), { code: 'read-back-wrong' }),
    ...own.lobe.lacks,
    ...(sinking ? [] : sunkLacks(own, questions)),
    ...(sinking ? [{ code: 'sinking' } as const] : isOtherUnit(own, questions) ? [] : own.valve.lacks),
    ...apartLacks(own, questions),
  ]);
  const waits = askedBefore(own, questions);
  return all.filter((lack) => !waits(lack));
}

/** Passes of which no mean may be taken: the lifter sinks, or nobody can say which of them is right. */
export const noMean = (own: SetUpRead, questions: readonly AssessedQuestion[]): boolean =>
  sinks(questions) || own.valve.lacks.length > 0 || own.lobe.passes.lacks.length > 0;
