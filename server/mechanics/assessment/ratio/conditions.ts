import { isDial } from '../../kit/lift-tools.ts';
import type { AssessedQuestion } from '../assessment.ts';
import { inDoubt } from '../common/asked.ts';
import { listed } from '../common/said.ts';
import { codeOf, foundBy, passNamed } from './answers.ts';
import { askedBefore } from './asked-before.ts';
import { ABOUT_TURNS } from './counted.ts';
import { OF_LOBE, passSaid } from './passes-repeat.ts';
import type { SetUpRead } from './set-up-read.ts';
import { SINKING, sinks, sunkLacks } from './sinking.ts';

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

/** The entries were read back, and one was wrong: which of them is not said, so that they are read back once more. */
export const READ_BACK_WRONG = 'the entry that was wrong put right, and the entries read back once more';

const wasReadBackWrong = ({ setUp }: SetUpRead): boolean =>
  setUp.answers
    .filter((answer) => codeOf(answer) === 'read-back')
    .flatMap((answer) => foundBy(answer) ?? [])
    .at(-1) === true;

/** How much is known: a ratio may be calculated with it put back, and no word stands on that. */
export const LASH_KNOWN_IN = 'a reading at zero lash, since lash was left in';

/** The lift is short by a lash on record: that is asked, in place of how the lash was. */
const asksForLash = (questions: readonly AssessedQuestion[]): boolean =>
  questions.some((question) => question.code === 'lash-left-in' && inDoubt(question));

function stateLacks({ setUp }: SetUpRead, questions: readonly AssessedQuestion[]): string[] {
  const { spring, lifter, lash, lashSetting, alignment, tool, lobeSource } = setUp;
  return [
    ...(spring === 'not-said' ? ['which spring is on the valve'] : []),
    ...(lifter === 'not-said' ? ['which lifter is under the pushrod'] : []),
    ...(lash === 'not-said' && !asksForLash(questions) ? ['whether the lash was taken up'] : []),
    ...(lash === 'set' && lashSetting === undefined
      ? ['a reading at zero lash, since lash was left in and how much is not said']
      : []),
    ...(lash === 'set' && lashSetting !== undefined ? [LASH_KNOWN_IN] : []),
    ...(tool === 'guess' ? ['a reading of the valve lift with a tool: this one is a guess'] : []),
    ...(lobeSource === 'guess' ? ['a reading of the lobe lift with a tool: this one is a guess'] : []),
    ...(alignment === 'leaning' && isDial(tool) ? ['a reading with the plunger parallel to the stem'] : []),
  ];
}

/** So many passes that agree outweigh one that was looked at and does not. */
const ENOUGH_FELLOWS = 3;

/** A pass that stands apart is out of the figures, but only a person strikes it out. */
function apartLacks({ setUp, valve, lobe }: SetUpRead, questions: readonly AssessedQuestion[]): string[] {
  const all = [...valve.aside, ...(lobe.from === undefined ? lobe.passes.aside : [])];
  const looked = (id: string, found: boolean) =>
    questions.some(
      ({ code, restsOn, answered }) =>
        ABOUT_TURNS.has(code) && restsOn.includes(id) && answered?.found === found,
    );
  return all.map(({ pass, why, code }) => {
    const again = `${passSaid(pass)} entered again or struck out: it ${why}`;
    if (code !== 'turn-apart') return again;
    if (looked(pass.id, true)) return `${again}, and that was found to be so`;
    if (!looked(pass.id, false)) return again;
    const isLobe = pass.kind === 'lobe-lift';
    // Counted, it is as good as the others: one more pass that is counted says which of them are right.
    return (isLobe ? lobe.passes : valve).used.length >= ENOUGH_FELLOWS
      ? `${again}, though its count was looked at`
      : `one more pass of the ${isLobe ? 'lobe' : 'valve'} lift${isDial(setUp.tool) ? ', small hand first' : ''}: pass ${pass.pass} ${why}, though its count was looked at`;
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

/** `pass 2`, `passes 1, 2 and 3 of the lobe`; without one of them `the reading`. */
function passesSaid(ids: readonly string[], { standing }: SetUpRead): string {
  const own = standing.filter(({ id }) => ids.includes(id));
  const numbers = own.map(({ pass }) => String(pass));
  if (numbers.length === 0) return 'the reading';
  const of = own.every(({ kind }) => kind === 'lobe-lift') ? OF_LOBE : '';
  return `${numbers.length === 1 ? 'pass' : 'passes'} ${listed([...new Set(numbers)])}${of}`;
}

/** Doubts about what the card says: found to be so, the card is put right and the passes stand. */
const ABOUT_CARD: ReadonlySet<string> = new Set([
  'wrong-card-row',
  'card-not-this-lobe',
  'valve-lift-as-lobe',
]);

/** Of the card too where a question that may be about a reading rests on none. */
export const isAboutCard = ({ code, restsOn }: Pick<AssessedQuestion, 'code' | 'restsOn'>): boolean =>
  ABOUT_CARD.has(code) || (code === 'gross-lift-as-lobe' && restsOn.length === 0);

/** A doubt that was found to be so. */
export function foundSaid({ code, ask, restsOn, answered }: AssessedQuestion, own: SetUpRead): string {
  const pass = answered === undefined ? undefined : passNamed(answered);
  if (pass !== undefined)
    return `pass ${pass} entered again or struck out: asked “${ask}”, the answer was yes`;
  const what = isAboutCard({ code, restsOn })
    ? 'the lobe lift of the card put right'
    : code === 'ratio-not-listed'
      ? 'the ratio that the part number has, as what they are sold as'
      : `${passesSaid(restsOn, own)} entered again or struck out`;
  // With a caliper again it would come out the same.
  const how = code === 'caliper-on-lobe' ? '; at the lifter it is read right' : '';
  return `${what}: asked “${ask}”, the answer was yes${how}`;
}

/** Strong doubts that nobody has answered, and all that were found to be so while the reading still stands. */
export function doubtsOf(own: SetUpRead, questions: readonly AssessedQuestion[]): string[] {
  const open = questions.filter((each) => isOpen(each, own));
  return open.map((question) => {
    const { ask, answered } = question;
    if (answered?.found === true) return foundSaid(question, own);
    return `the answer to “${ask}”`;
  });
}

/** Passes in another unit lie apart by as much: whether they are is asked first. */
const isOtherUnit = ({ valve }: SetUpRead, questions: readonly AssessedQuestion[]): boolean =>
  questions.some(
    (question) =>
      OF_UNIT.has(question.code) &&
      inDoubt(question) &&
      valve.used.some(({ id }) => question.restsOn.includes(id)),
  );

/** What must be known or done before a word stands against what was read in this set-up, its doubts aside. */
export function lacksOf(own: SetUpRead, questions: readonly AssessedQuestion[]): string[] {
  const sinking = sinks(questions);
  const all = [
    ...new Set([
      ...stateLacks(own, questions),
      ...(own.valve.used.length === 0 ? ['a pass of the valve lift'] : []),
      ...(wasReadBackWrong(own) ? [READ_BACK_WRONG] : []),
      ...own.lobe.lacks,
      ...(sinking ? [] : sunkLacks(own, questions)),
      ...(sinking ? [SINKING] : isOtherUnit(own, questions) ? [] : own.valve.lacks),
      ...apartLacks(own, questions),
    ]),
  ];
  const asked = askedBefore(own, questions);
  return all.filter((lack) => !asked.some((start) => lack.startsWith(start)));
}

/** Passes of which no mean may be taken: the lifter sinks, or nobody can say which of them is right. */
export const noMean = (own: SetUpRead, questions: readonly AssessedQuestion[]): boolean =>
  sinks(questions) || own.valve.lacks.length > 0 || own.lobe.passes.lacks.length > 0;
