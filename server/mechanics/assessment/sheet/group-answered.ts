import { isAnswer } from '../../../../shared/begins-with.ts';
import { sideOfValve } from '../../../../shared/schemas/words.ts';
import { allowance } from '../../kit/allowances.ts';
import { medianKnown } from '../../valve-sheet/siblings.ts';
import type { TwoGroups } from '../../valve-sheet/two-groups.ts';
import type { SheetValve } from '../../valve-sheet/types.ts';
import type { AssessedQuestion, Subject } from '../assessment.ts';
import type { AnswerEvidence, Evidence, Side, Spring, ValvePlace } from '../evidence.ts';
import { HELD } from './group-words.ts';
import { wereReadSince } from './read-since.ts';

/** What was answered of valves that were off alike. */
interface GroupAnswer {
  readonly answer: AnswerEvidence;
  /** Both sides of the engine, or one. */
  readonly about: string;
  readonly spring: string;
  readonly cylinders: ReadonlySet<string>;
}

const ASKED = /^question:group-off:(build|intake|exhaust):([a-z-]+)-(\d+(?:-\d+)*):/;

/** The answers as they were given, each with the valves that it was given of: the last first. */
const answersOf = ({ answers }: Evidence): GroupAnswer[] =>
  answers
    .flatMap((answer) => {
      const [, about, spring, cylinders] = ASKED.exec(answer.questionId ?? '') ?? [];
      if (about === undefined || spring === undefined || cylinders === undefined) return [];
      return [{ answer, about, spring, cylinders: new Set(cylinders.split('-')) }];
    })
    .toSorted((a, b) => b.answer.line - a.answer.line);

const chosenIn = ({ answer }: GroupAnswer): string => answer.answer.split(':')[0]?.trim() ?? '';

const isIn = ({ cylinders }: GroupAnswer, { cylinder }: ValvePlace): boolean =>
  cylinders.has(String(cylinder));

const WHOLE = /^question:(side-off|lobes-off-card):(build|intake|exhaust):([a-z-]+):/;

/** Readings that an answer about many valves at once found wrong: nothing but the newer ones counts. */
interface HeldByAnswer {
  readonly line: number;
  readonly kind: 'lobe-lift' | 'valve-lift';
  readonly spring?: string;
  readonly side?: string;
  readonly cylinders?: ReadonlySet<string>;
}

const sideIn = (about: string): Pick<HeldByAnswer, 'side'> => (about === 'build' ? {} : { side: about });

/** What was answered of groups, sides and columns of lobes that has them read again. */
export const heldByAnswer = (evidence: Evidence): HeldByAnswer[] => [
  ...answersOf(evidence)
    .filter((each) => HELD[chosenIn(each)] !== undefined)
    .map(
      ({ answer: { line }, about, spring, cylinders }): HeldByAnswer => ({
        ...{ line, kind: 'valve-lift', spring, cylinders },
        ...sideIn(about),
      }),
    ),
  ...evidence.answers.flatMap(({ questionId, answer, line }): HeldByAnswer[] => {
    if (questionId?.startsWith('question:lash-not-said:build:sheet:') && isAnswer(answer, 'set'))
      return [{ line, kind: 'valve-lift' }];
    const [, code, about = '', spring = ''] = WHOLE.exec(questionId ?? '') ?? [];
    if (code === 'side-off' && isAnswer(answer, 'set-up'))
      return [{ line, kind: 'valve-lift', spring, ...sideIn(about) }];
    return code === 'lobes-off-card' && isAnswer(answer, 'dial')
      ? [{ line, kind: 'lobe-lift', ...sideIn(about) }]
      : [];
  }),
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
  return { ...question, answered: { entryId: found.answer.id, answer: found.answer.answer } };
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
    .flatMap((each) => WAS_READ[chosenIn(each)] ?? [])[0];

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
    .filter((each) => HELD[chosenIn(each)] !== undefined)
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
