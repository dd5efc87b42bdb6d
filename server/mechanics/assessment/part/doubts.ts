import type { AnswerChoice, AssessedQuestion } from '../assessment.ts';
import { asked, type Doubt } from '../common/asked.ts';
import { chosenOf } from '../common/chosen.ts';
import { keyOf } from '../common/said.ts';
import { isSince } from '../common/since.ts';
import type { AnswerEvidence, PartEvidence } from '../evidence.ts';
import type { InHand } from './in-hand.ts';

/** A reading as it counts now: an answer may have made it another size, or another kind. */
export interface CountedReading extends PartEvidence {
  /** What the answer made of it, for whoever reads it: `meant as .4355 in`. */
  readonly countsAs?: string;
  /** The size of stud or drill shank that goes through this hole without play, `none` where none does. */
  readonly tried?: string;
}

/** What a question does to the readings, by the answer chosen; undefined while it is open. */
export type Effect = (
  readings: readonly CountedReading[],
  chosen: string | undefined,
) => readonly CountedReading[];

/** A doubt about readings of a part, its answers, and what each of them changes. */
export interface PartDoubt extends Omit<Doubt, 'weight'> {
  /** Of which entries it is, for its id; left out, the first that it rests on. */
  readonly among?: string;
  readonly choices: readonly AnswerChoice[];
  readonly effect?: Effect;
}

/** A reading that does not count now, with the question that waits for it or took it out. */
interface LeftOut {
  readonly entryId: string;
  readonly questionId: string;
  /** Nobody has answered yet. */
  readonly waits: boolean;
}

export interface Weighed {
  readonly readings: readonly CountedReading[];
  readonly questions: readonly AssessedQuestion[];
  readonly leftOut: readonly LeftOut[];
}

/** What was read, whichever entry has it. */
const figuresOf = (readings: readonly PartEvidence[]): string =>
  [
    ...new Set(
      readings.map(
        ({ kind, size, word, count }) => `${kind} ${size?.toFixed(7) ?? word ?? ''} ${count ?? ''}`,
      ),
    ),
  ]
    .sort()
    .join('\n');

/** Answers that hold for the same figures entered once more; which of two is right is asked of each reading. */
const ofEntries: ReadonlySet<string> = new Set(['smallest', 'largest']);

/**
 * What the same question was answered of entries with the same figures. A reading that was held to be misread, and came
 * out as it was when it was entered again, is as it was read: nobody is asked a second time.
 */
function readAgain(
  part: Pick<InHand, 'about' | 'readings'>,
  answers: readonly AnswerEvidence[],
  { code, restsOn }: Pick<Doubt, 'code' | 'restsOn'>,
  askedOf: (ids: string) => AssessedQuestion,
): string | undefined {
  const own = part.readings.filter(({ id }) => restsOn.includes(id));
  const found = answeredAmong(part, answers, code).flatMap((ids): string[] => {
    const before = part.readings.filter(({ id }) => ids.includes(id));
    if (before.length !== ids.length || figuresOf(before) !== figuresOf(own)) return [];
    const question = askedOf(ids.join(AND));
    const chosen = chosenOf(question);
    if (chosen === undefined || ofEntries.has(chosen)) return [];
    if (chosen !== 'found') return [chosen];
    const answer = answers.find(({ id }) => id === question.answered?.entryId);
    const since = own.filter(({ id }) => !ids.includes(id));
    return answer !== undefined && since.every((each) => isSince(each, answer)) ? ['not-found'] : [];
  });
  return found[0];
}

/** Questions of one kind put to the readings as they count by now, with what their answers change. */
export function putTo(
  before: Weighed,
  part: Pick<InHand, 'about' | 'readings'>,
  answers: readonly AnswerEvidence[],
  find: (readings: readonly CountedReading[]) => readonly PartDoubt[],
): Weighed {
  const { about } = part;
  return find(before.readings).reduce((weighed: Weighed, { choices, effect, among, ...doubt }): Weighed => {
    const askedOf = (ids: string) =>
      asked({ ...doubt, weight: 'weak' }, { about, step: 'identify', among: ids, answers, choices });
    // Two stamps without a dot are two questions, though their words are the same.
    const question = askedOf(among ?? doubt.restsOn[0] ?? '');
    const again = question.answered === undefined ? readAgain(part, answers, doubt, askedOf) : undefined;
    if (again !== undefined)
      return {
        readings: effect?.(weighed.readings, again) ?? weighed.readings,
        questions: weighed.questions,
        leftOut: weighed.leftOut,
      };
    if (weighed.questions.some(({ id }) => id === question.id)) return weighed;
    const chosen = chosenOf(question);
    const readings = effect?.(weighed.readings, chosen) ?? weighed.readings;
    const kept = new Set(readings.map(({ id }) => id));
    const gone = weighed.readings.filter(({ id }) => !kept.has(id));
    return {
      readings,
      questions: [...weighed.questions, question],
      leftOut: [
        ...weighed.leftOut,
        ...gone.map(({ id }) => ({ entryId: id, questionId: question.id, waits: chosen === undefined })),
      ],
    };
  }, before);
}

const AND = '+';
/** Entries as an id has them, so that an answer holds for them whatever is read after it. */
export const amongOf = (ids: readonly string[]): string => ids.toSorted().join(AND);

/** The entries that answered questions of this kind were of, each set once. */
export function answeredAmong(
  { about }: Pick<InHand, 'about'>,
  answers: readonly AnswerEvidence[],
  code: string,
): string[][] {
  const begin = `question:${code}:${keyOf(about)}:`;
  const among = answers.flatMap(({ questionId = '' }) =>
    questionId.startsWith(begin) ? [questionId.slice(begin.length).split(':')[0] ?? ''] : [],
  );
  return [...new Set(among)].sort().map((ids) => ids.split(AND));
}

export const without = (readings: readonly CountedReading[], ids: readonly string[]): CountedReading[] =>
  readings.filter(({ id }) => !ids.includes(id));

export const choice = (code: string, label: string, changes: string): AnswerChoice => ({
  code,
  label,
  changes,
});

export const AS_READ = choice('not-found', 'Read again: it is as it was read', 'It counts as it was read.');
export const MISREAD = choice(
  'found',
  'It was misread, or it is another size',
  'It does not count; it is read again and entered again.',
);

export const idsOfKind = (
  readings: readonly { readonly id: string; readonly kind: string }[],
  kind: string,
) => readings.flatMap((each) => (each.kind === kind ? [each.id] : [])).sort();

/** Readings of one kind that have a size. */
export const sized = (readings: readonly CountedReading[], kind: string) =>
  readings.flatMap((reading) => {
    const { size } = reading;
    return reading.kind === kind && size !== undefined ? [{ ...reading, size }] : [];
  });
