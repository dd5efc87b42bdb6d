import { isAnswer } from '../../../../../shared/begins-with.ts';
import { defined } from '../../../../../shared/defined.ts';
import { sideOfValve } from '../../../../../shared/schemas/words.ts';
import { allowance } from '../../../kit/allowances.ts';
import { medianKnown } from '../../../valve-sheet/siblings.ts';
import type { TwoGroups } from '../../../valve-sheet/two-groups.ts';
import type { SheetValve } from '../../../valve-sheet/types.ts';
import type { AssessedQuestion, Subject } from '../../assessment.ts';
import { foundOf, isOfSame, lastAnswers, partsOfId } from '../../common/asked.ts';
import { placeOf } from '../../common/said.ts';
import { enteredAt, isSince, wasThere } from '../../common/since.ts';
import type { AnswerEvidence, Evidence, SheetEvidence, Side, Spring, ValvePlace } from '../../evidence.ts';
import { wereReadSince } from '../rows/read-since.ts';
import { LASH_OF_SHEET } from '../rows/said-of-sheet.ts';
import { GROUP_CHOICES, GROUP_OFF, HELD } from './group-words.ts';
import { LOBES_OFF_CARD, SIDE_OFF } from './side-words.ts';

/** What was answered of valves that were off alike. */
interface GroupAnswer {
  readonly answer: AnswerEvidence;
  /** Both sides of the engine, or one. */
  readonly about: string;
  readonly spring: string;
  readonly cylinders: ReadonlySet<string>;
}

/** The cylinders of a group in the id of its question: `light-2-4-6-8`. */
const AMONG = /^([a-z-]+)-(\d+(?:-\d+)*)$/;

/** An answer as it was given, with the valves that it was given of. */
function groupOf(answer: AnswerEvidence): GroupAnswer[] {
  const { code, about, among } = partsOfId(answer.questionId) ?? {};
  const [, spring, cylinders] = AMONG.exec(among ?? '') ?? [];
  if (code !== GROUP_OFF || about === undefined || spring === undefined || cylinders === undefined) return [];
  return [{ answer, about, spring, cylinders: new Set(cylinders.split('-')) }];
}

/** By its code, or by what was found, where the answer is kept in its own words. */
const chosenIn = ({ answer }: GroupAnswer): string | undefined =>
  GROUP_CHOICES.find(({ code }) => isAnswer(answer.answer, code))?.code ??
  (foundOf(answer, GROUP_CHOICES) === false ? 'not-found' : undefined);

const isIn = ({ cylinders }: GroupAnswer, { cylinder }: ValvePlace): boolean =>
  cylinders.has(String(cylinder));

const sideIn = (about: string): Pick<Scope, 'side'> => (about === 'build' ? {} : { side: about });

/** Lifts that an answer about many valves at once is of. */
interface Scope {
  readonly kind: 'lobe-lift' | 'valve-lift';
  readonly spring?: string;
  readonly side?: string;
  readonly cylinders?: ReadonlySet<string>;
}

const scopeOf = ({ about, spring, cylinders }: GroupAnswer): Scope => ({
  kind: 'valve-lift',
  spring,
  cylinders,
  ...sideIn(about),
});

/** Whether a lift is one of those. */
export const isInScope = (
  { kind, spring, side, cylinders }: Scope,
  entry: Pick<SheetEvidence, 'kind' | 'spring' | 'valve' | 'cylinder'>,
): boolean =>
  entry.kind === kind &&
  (spring === undefined || entry.spring === spring) &&
  (side === undefined || sideOfValve(entry.valve) === side) &&
  (cylinders === undefined || cylinders.has(String(entry.cylinder)));

/** An answer, and the lifts that it is of. */
interface OfMany {
  readonly answer: AnswerEvidence;
  readonly scope: Scope;
}

/** It stands, was found wrong and read again, or was put right by one that stands: one that was struck was never read. */
const isStillRead = (sheet: readonly SheetEvidence[], entry: SheetEvidence): boolean =>
  entry.standing ||
  entry.readAgain === true ||
  sheet.some((each) => each.standing && enteredAt(each) === enteredAt(entry));

/** All that were there were read once more after the one answer and before the other. */
function isReadBetween(
  sheet: readonly SheetEvidence[],
  { answer, scope }: OfMany,
  later: AnswerEvidence,
): boolean {
  const own = sheet.filter((entry) => isInScope(scope, entry));
  const between = own.filter(
    (entry) => isSince(entry, answer) && wasThere(entry, later) && isStillRead(sheet, entry),
  );
  const places = new Set(between.map(placeOf));
  return (
    between.length > 0 &&
    own.filter((entry) => wasThere(entry, answer)).every((entry) => places.has(placeOf(entry)))
  );
}

/**
 * Answers of many that count. Given again, an answer puts the one before it right; where all of them were read again
 * between the two, it is of what was read since, and both hold.
 */
const counting = <Each extends OfMany>(
  all: readonly Each[],
  { answers, sheet }: Pick<Evidence, 'answers' | 'sheet'>,
): Each[] =>
  all.filter(
    (each) =>
      !answers.some(
        (other) =>
          other.line > each.answer.line && isOfSame(other, each.answer) && !isReadBetween(sheet, each, other),
      ),
  );

/** The answers of groups that count, the last first. */
const answersOf = (evidence: Evidence): GroupAnswer[] =>
  counting(
    evidence.answers.flatMap(groupOf).map((each) => ({ ...each, scope: scopeOf(each) })),
    evidence,
  ).toSorted((a, b) => b.answer.line - a.answer.line);

/** Answers that have a whole side or a column of lobes read again. */
function ofSide(answer: AnswerEvidence): OfMany[] {
  const { code, about = '', among = '' } = partsOfId(answer.questionId) ?? {};
  if (code === SIDE_OFF && isAnswer(answer.answer, 'set-up'))
    return [{ answer, scope: { kind: 'valve-lift', spring: among, ...sideIn(about) } }];
  return code === LOBES_OFF_CARD && isAnswer(answer.answer, 'dial')
    ? [{ answer, scope: { kind: 'lobe-lift', ...sideIn(about) } }]
    : [];
}

/** The lash of the whole sheet was left in. How it was is asked once: read again or not, the last answer counts. */
function ofSheet(answer: AnswerEvidence): OfMany[] {
  const { code, among } = partsOfId(answer.questionId) ?? {};
  return code === LASH_OF_SHEET && among === 'sheet' && isAnswer(answer.answer, 'set')
    ? [{ answer, scope: { kind: 'valve-lift' } }]
    : [];
}

/** Answers that count of a whole side, or of a column of lobes, that was not read right. */
export const sideAnswers = (evidence: Evidence): OfMany[] =>
  counting(evidence.answers.flatMap(ofSide), evidence);

/** Readings that an answer about many valves at once found wrong: nothing but the newer ones counts. */
export const heldByAnswer = (evidence: Evidence): OfMany[] => [
  ...answersOf(evidence)
    .filter((each) => HELD[chosenIn(each) ?? ''] !== undefined)
    .map((each) => ({ answer: each.answer, scope: scopeOf(each) })),
  ...sideAnswers(evidence),
  ...lastAnswers(evidence.answers).flatMap(ofSheet),
];

/** As some of them are read again, fewer are off: what was answered of all holds for those that are left. */
export function stillAnswered(
  evidence: Evidence,
  question: AssessedQuestion,
  { spring, own }: { readonly spring: Spring; readonly own: readonly ValvePlace[] },
): AssessedQuestion {
  if (question.answered !== undefined) return question;
  const isDone = ({ id }: AnswerEvidence): boolean => wereReadSince(evidence, own, spring, id);
  const isOf = (about: Subject, said: string) =>
    said === 'build' || (about.of === 'side' && about.valve === said);
  const found = answersOf(evidence).find(
    (each) =>
      each.spring === spring &&
      isOf(question.about, each.about) &&
      own.every((place) => isIn(each, place)) &&
      !isDone(each.answer),
  );
  if (found === undefined) return question;
  const { id: entryId, answer } = found.answer;
  const was = foundOf(found.answer, GROUP_CHOICES);
  return { ...question, answered: { entryId, answer, ...defined({ found: was }) } };
}

const WAS_READ: Readonly<Record<string, string>> = {
  lash: 'with the lash in',
  'set-up': 'otherwise than the others',
};

/** How a valve was read at first, as was answered of all that were off with it: `with the lash in`. */
export const wasRead = (evidence: Evidence, place: ValvePlace, spring: string): string | undefined =>
  answersOf(evidence)
    .filter((each) => each.spring === spring && isIn(each, place))
    .filter(({ about }) => about === 'build' || about === sideOfValve(place.valve))
    .flatMap((each) => WAS_READ[chosenIn(each) ?? ''] ?? [])[0];

/** Those that were low had their lash in, as was answered: the others, and all that were read again, have it out. */
export const isLashOut = (evidence: Evidence, side: Side, spring: string): boolean =>
  answersOf(evidence).some(
    (each) =>
      each.spring === spring && (each.about === 'build' || each.about === side) && chosenIn(each) === 'lash',
  );

const liftOf = ({ valveLift = 0 }: SheetValve): number => valveLift;

/** Those that are left to be read again, too few to be told from one that is odd without the answer. */
export function leftOfGroup(
  evidence: Evidence,
  { side, spring }: { readonly side: Side; readonly spring: Spring },
  valves: readonly SheetValve[],
): TwoGroups | undefined {
  const read = valves.filter(({ valveLift }) => valveLift !== undefined);
  return answersOf(evidence)
    .filter((each) => each.spring === spring && (each.about === 'build' || each.about === side))
    .filter((each) => HELD[chosenIn(each) ?? ''] !== undefined)
    .flatMap((each): TwoGroups[] => {
      const middle = medianKnown(read.filter((valve) => !isIn(each, valve)).map(liftOf));
      if (middle === undefined) return [];
      const isOff = (valve: SheetValve) => Math.abs(liftOf(valve) - middle) > allowance('odd-beyond');
      const own = read.filter((valve) => isIn(each, valve) && isOff(valve));
      if (wereReadSince(evidence, own, spring, each.answer.id)) return [];
      const others = read.filter((valve) => !own.includes(valve));
      const off = medianKnown(own.map((valve) => liftOf(valve) - middle));
      return off === undefined ? [] : [{ own, others, off, banks: false }];
    })[0];
}
