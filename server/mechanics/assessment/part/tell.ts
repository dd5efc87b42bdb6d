import { shortLength } from '../../../../shared/quantities/short-length.ts';
import { isPartSize, PART_FEATURES, PART_SIZES } from '../../../../shared/schemas/part-words.ts';
import { type PartKind, SIZE_KINDS } from '../../identify/kinds.ts';
import { IDENTIFICATION_MODEL } from '../../identify/model.ts';
import type { AssessedQuestion, NextAction } from '../assessment.ts';
import { nominalSaid, subjectSaid, upperFirst } from '../common/said.ts';
import { shareSaid } from './chance.ts';
import type { PartDetail, TellDetail } from './detail.ts';
import type { Ranked, Ranking } from './ranking.ts';
import { STANDS_ALONE } from './stands-alone.ts';

/**
 * A gain below the first is not worth walking to the bench for; above the second the part is named, and no ratio is read
 * only to name it; a family below the third is no rival of the first.
 */
const { worthReading: WORTH_IT, nearlySettled: NAMED, rival: RIVAL } = IDENTIFICATION_MODEL.told;

const NAMES = { ...PART_SIZES, ...PART_FEATURES };

const thingSaid = (kind: PartKind): string =>
  isPartSize(kind) ? NAMES[kind].toLowerCase() : `the ${NAMES[kind].toLowerCase()}`;

/** A size of the catalogue, with no fewer places than it is written with. */
const sizeSaid = (si: number): string => shortLength(si);

/** What parts the two families that stand first, by the catalogue. */
function partedBy([first, second]: readonly Ranked[], kind: PartKind): string {
  if (first === undefined || second === undefined || !isPartSize(kind)) return '';
  const [one, other] = [first.family.sizes[kind], second.family.sizes[kind]];
  if (one === undefined || other === undefined || one === other) return '';
  return `${first.family.name} is made with ${sizeSaid(one)}, ${second.family.name} with ${sizeSaid(other)}.`;
}

/** The two that stand first, where nothing but their nominal ratio parts them. */
function partedByRatio([first, second]: readonly Ranked[]): string | undefined {
  const [one, other] = [first?.family.nominalRatio, second?.family.nominalRatio];
  if (first === undefined || second === undefined || one === undefined || other === undefined)
    return undefined;
  if (one === other || second.chance.probability < RIVAL) return undefined;
  return `${first.family.name} is nominally ${nominalSaid(one)}, ${second.family.name} ${nominalSaid(other)}.`;
}

/** Doubts about what was read come before another size: nothing is told past them. */
export const waitingTell = (test: string): TellDetail => ({
  sentence: `First: ${test.charAt(0).toLowerCase()}${test.slice(1)}`,
  parted: '',
  byRatio: false,
});

/** Why it tells most: in figures where a chance is told at all. */
const worthSaid = (thing: string, now: number, then: number, told: boolean): string =>
  told
    ? `${thing} would tell most: it would raise the chance of naming the part right from ${shareSaid(now)} to ${shareSaid(then)}.`
    : `${thing} would tell most.`;

/** The measurement that settles most, with its reason; where none does, the ratio on the engine may. */
export function tellOf(
  { candidates, noneOfThese, offers: [offer], read }: Ranking,
  told: boolean,
): TellDetail {
  const now = Math.max(noneOfThese.probability, candidates[0]?.chance.probability ?? 0);
  if (offer !== undefined && offer.rightFirst >= now + WORTH_IT)
    return {
      kind: offer.kind,
      sentence: worthSaid(upperFirst(thingSaid(offer.kind)), now, offer.rightFirst, told),
      parted: partedBy(candidates, offer.kind),
      byRatio: false,
    };
  const another = SIZE_KINDS.find((kind) => !read.has(kind));
  // From one kind of reading nothing is named: that another one would not change it much is no answer.
  if (read.size === 1 && another !== undefined)
    return {
      kind: another,
      sentence: `From one kind of reading no family is named: read ${thingSaid(another)} as well.`,
      parted: '',
      byRatio: false,
    };
  const ratio = partedByRatio(candidates);
  if (ratio !== undefined && now < NAMED)
    return {
      sentence: 'No further size parts the two that stand first; the ratio on the engine does.',
      parted: ratio,
      byRatio: true,
    };
  return {
    sentence:
      'Nothing that is left to measure would change the first name by much. The ratio is still unknown until a valve moves.',
    parted: '',
    byRatio: true,
  };
}

/** The measurement that settles most as something to do; the part is off the engine, and nothing turns for it. */
function measureNext({ about, key, ranking }: PartDetail): NextAction[] {
  const kind = ranking?.tell.kind;
  if (ranking === undefined || kind === undefined || ranking.counted === 0) return [];
  const verb = isPartSize(kind) ? 'Measure' : 'Look at';
  return [
    {
      id: `next:${key}:${kind}`,
      action: kind,
      step: 'identify',
      about,
      sentence:
        about.name === undefined
          ? `${verb} ${thingSaid(kind)} of the part.`
          : `${upperFirst(about.name)}: ${verb.toLowerCase()} ${thingSaid(kind)}.`,
      reason: ranking.tell.sentence,
      turns: false,
    },
  ];
}

/** Asked before anything is named, though their readings count meanwhile. */
const BEFORE_ANY_NAME: ReadonlySet<string> = new Set([
  STANDS_ALONE,
  'hole-between-sizes',
  'two-sizes',
  'rings-against-width',
]);

/** Open questions that keep readings from counting, or stand before any name. */
export function firstAsked(
  questions: readonly AssessedQuestion[],
  parts: readonly Pick<PartDetail, 'readings'>[],
): AssessedQuestion[] {
  const waited = parts.flatMap(({ readings }) =>
    readings.flatMap(({ counts, questionId }) => (counts === 'waits' ? [questionId] : [])),
  );
  return questions
    .filter(({ answered }) => answered === undefined)
    .filter(({ id, code }) => BEFORE_ANY_NAME.has(code) || waited.includes(id));
}

/** Of the stud that came out: settled by hand at once, and the thread is told by nothing else. */
const OF_THE_STUD: ReadonlySet<string> = new Set(['crests-counted', 'stud-no-thread', 'stud-against-hole']);

function answerNext(questions: readonly AssessedQuestion[], parts: readonly PartDetail[]): NextAction[] {
  const ofStud = questions.filter(({ code, answered }) => answered === undefined && OF_THE_STUD.has(code));
  return [...firstAsked(questions, parts), ...ofStud].map(({ id, code, about, test, ask }) => ({
    id: `next:${id}`,
    action: code,
    step: 'identify',
    about,
    sentence: `${upperFirst(subjectSaid(about))}: ${test}`,
    reason: ask,
    turns: false,
  }));
}

/** What is worth most of the parts in the hand, in the two places where it comes among what else is next. */
export interface NextOfPart {
  /** The answer that readings wait for: nothing more is measured before it. */
  readonly answer: NextAction | undefined;
  /** The measurement that tells most, once what is always read is there. */
  readonly measure: NextAction | undefined;
}

export const partNext = (
  parts: readonly PartDetail[],
  questions: readonly AssessedQuestion[],
): NextOfPart => ({
  answer: answerNext(questions, parts)[0],
  measure: parts.flatMap(measureNext)[0],
});
