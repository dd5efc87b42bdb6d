import { asEntered } from '../../../../shared/quantities/as-entered.ts';
import { formatQuantity } from '../../../../shared/quantities/format.ts';
import {
  isPartFitting,
  isPartSize,
  PART_FITTINGS,
  PART_SIZES,
} from '../../../../shared/schemas/part-words.ts';
import { keysOf } from '../../../../shared/schemas/words.ts';
import { standTogether } from '../../identify/likelihood.ts';
import { IDENTIFICATION_MODEL } from '../../identify/model.ts';
import type { AssessedQuestion } from '../assessment.ts';
import { chosenOf } from '../common/chosen.ts';
import { listed, upperFirst } from '../common/said.ts';
import { AS_READ, amongOf, type CountedReading, choice, type PartDoubt, sized, without } from './doubts.ts';
import { asReadSize } from './read-size.ts';
import { eitherSaid, nameOf } from './size-said.ts';
import { sizesNear } from './sizes-near.ts';
import { goTogether, readsOf } from './thread-read.ts';

/* Readings of one place that reading alone does not put so far apart. */

interface Reading {
  readonly id: string;
  readonly readAs: string;
  readonly value: number;
}

/** What was read of one place, the smallest first, and whether two of them can both be right. */
interface OfOnePlace {
  readonly kind: string;
  readonly reads: readonly Reading[];
  readonly together: (one: string, other: string) => boolean;
}

const HOLE = 'hole-across-trunnion';

function sizesOf(readings: readonly CountedReading[], kind: keyof typeof PART_SIZES): OfOnePlace {
  const own = sized(readings, kind);
  const model = IDENTIFICATION_MODEL.sizes[kind];
  const of = (id: string) => own.filter((each) => each.id === id).map(asReadSize);
  return {
    kind,
    reads: own
      .map((each) => ({ id: each.id, readAs: each.readAs, value: asReadSize(each).value }))
      .toSorted((a, b) => a.value - b.value),
    together: (one, other) => standTogether(model, kind, [...of(one), ...of(other)]),
  };
}

function fittingsOf(readings: readonly CountedReading[], kind: keyof typeof PART_FITTINGS): OfOnePlace {
  const reads = readsOf(readings, kind);
  const both = goTogether(kind);
  return {
    kind,
    reads,
    together: (one, other) =>
      reads.every(
        (a) =>
          a.id !== one || reads.every((b) => b.id !== other || (a.value < b.value ? both(a, b) : both(b, a))),
      ),
  };
}

const placesOf = (readings: readonly CountedReading[]): OfOnePlace[] => [
  ...keysOf(PART_SIZES).map((kind) => sizesOf(readings, kind)),
  ...keysOf(PART_FITTINGS).map((kind) => fittingsOf(readings, kind)),
];

/** The readings that go with one of them, itself first of all. */
const goingWith = ({ reads, together }: OfOnePlace, one: Reading): Reading[] =>
  reads.filter((other) => other.id === one.id || together(one.id, other.id));

/** The readings in two heaps, where each is in one of them: those that go with the least, and those with the most. */
interface Heaps {
  readonly less: readonly Reading[];
  readonly more: readonly Reading[];
}

function heapsOf(place: OfOnePlace): Heaps | undefined {
  const [least, most] = [place.reads[0], place.reads.at(-1)];
  if (least === undefined || most === undefined) return undefined;
  const [less, more] = [goingWith(place, least), goingWith(place, most)];
  const isOnce = less.every(({ id }) => more.every((other) => other.id !== id));
  return isOnce && less.length + more.length === place.reads.length ? { less, more } : undefined;
}

const figures = (reads: readonly Reading[]): string[] => [
  ...new Set(reads.map(({ readAs }) => asEntered(readAs))),
];

/** `.3745 in and .375 in are right`, `.381 in is right` */
function rightSaid(reads: readonly Reading[]): string {
  const said = figures(reads);
  return `${listed(said)} ${said.length > 1 ? 'are' : 'is'} right`;
}

const agreeSaid = (reads: readonly Reading[]): string => {
  const said = figures(reads);
  return said.length > 1 ? `${listed(said)} agree` : `${said.join()} was read ${reads.length} times`;
};

/** How many speak for each of two sizes: one reading against several is mostly the one that is wrong. */
function weightSaid(heaps: Heaps | undefined): string | undefined {
  if (heaps === undefined) return undefined;
  const { less, more } = heaps;
  const [few, many] = less.length < more.length ? [less, more] : [more, less];
  if (many.length < 2) return undefined;
  return few.length === 1
    ? `${upperFirst(agreeSaid(many))}; ${figures(few).join()} stands alone.`
    : `Each of the two came out again: ${agreeSaid(less)}, ${agreeSaid(more)}.`;
}

/** It was read as was asked, and both sizes are there again. */
const cameOutAgain = (heaps: Heaps | undefined): boolean =>
  heaps !== undefined && heaps.less.length > 1 && heaps.more.length > 1;

const WHY: Readonly<Record<string, string>> = {
  [HOLE]: 'oval, burred or cocked jaws',
  'roller-diameter': 'a flat on the roller',
};

const AGAIN: Readonly<Record<string, string>> = {
  'stud-pitch': 'count it again over one length, from a crest to a crest, with the unit of the rule',
  'stud-diameter': 'read it again over the thread near its end, and once more a quarter turn round',
};

const text = (inches: number) =>
  formatQuantity({ value: Number(inches.toPrecision(12)), unit: 'in' }, { places: 4 });

function askedOf(kind: string, reads: readonly Reading[], least: Reading, most: Reading): string {
  if (!isPartSize(kind))
    return `${upperFirst(nameOf(kind))}: ${listed(reads.map(({ readAs }) => asEntered(readAs)))} cannot both be right. Which of them is?`;
  const apart = `the readings are ${text(most.value - least.value)} apart, more than ${text(IDENTIFICATION_MODEL.sizes[kind].apart)}`;
  return `${PART_SIZES[kind]}: ${apart}. Is it ${WHY[kind] ?? 'a tilted caliper, or not the same place'}? Both are kept, and neither is averaged away.`;
}

function testOf(place: OfOnePlace, readings: readonly CountedReading[]): string {
  const { kind } = place;
  if (kind === HOLE) {
    const own = sized(readings, kind).map(({ size }) => size);
    const near = eitherSaid(sizesNear([Math.min(...own), Math.max(...own)]));
    return `slide a ${near} stud or drill shank through it by hand: the one that goes without play is its size`;
  }
  if (isPartSize(kind) && cameOutAgain(heapsOf(place)))
    return 'it was read again, and both came out: say whether it is uneven there, or which of the two is the place that is meant';
  return (
    AGAIN[kind] ??
    (isPartFitting(kind)
      ? 'read it again, and once more a quarter turn round'
      : 'read the same size again, turned a quarter turn, twice each way')
  );
}

const AWAY = 'What is too far from it does not count.';

function twoOf(place: OfOnePlace, readings: readonly CountedReading[]): PartDoubt[] {
  const { kind, reads, together } = place;
  const [least, most] = [reads[0], reads.at(-1)];
  if (least === undefined || most === undefined) return [];
  if (reads.every((one) => goingWith(place, one).length === reads.length)) return [];
  const ids = reads.map(({ id }) => id).sort();
  const apartFrom = (one: Reading) => ids.filter((id) => id !== one.id && !together(one.id, id));
  const size = weightSaid(heapsOf(place));
  return [
    {
      code: 'two-sizes',
      ask: askedOf(kind, reads, least, most),
      ...(size === undefined ? {} : { size }),
      test: testOf(place, readings),
      restsOn: ids,
      among: amongOf(ids),
      choices: [
        choice('smallest', rightSaid(goingWith(place, least)), AWAY),
        choice('largest', rightSaid(goingWith(place, most)), AWAY),
        choice('found', 'Neither is trusted', 'None of them counts; it is read again.'),
        isPartSize(kind)
          ? { ...AS_READ, label: 'All read again: it is uneven', changes: 'Each counts for itself.' }
          : choice('not-found', 'Both are: there are two of them', 'Each counts for itself.'),
      ],
      effect: (now, chosen) => {
        if (chosen === 'smallest') return without(now, apartFrom(least));
        if (chosen === 'largest') return without(now, apartFrom(most));
        return chosen === 'found' ? without(now, ids) : now;
      },
    },
  ];
}

/** Readings of one size, or of a stud, that are further apart than reading alone explains. */
export const twoSizes = (readings: readonly CountedReading[]): PartDoubt[] =>
  placesOf(readings).flatMap((place) => twoOf(place, readings));

/**
 * The same, but for what was said to be uneven, or to be two: a reading that was taken later and goes with one of those, or
 * lies between them, says nothing new.
 *
 * @param answeredBefore questions that were asked of the same readings before
 */
export const moreThanUneven =
  (answeredBefore: readonly AssessedQuestion[]) =>
  (readings: readonly CountedReading[]): PartDoubt[] => {
    const uneven = answeredBefore.filter(
      (question) => question.code === 'two-sizes' && chosenOf(question) === 'not-found',
    );
    return placesOf(readings)
      .filter(({ reads, together }) => {
        const said = uneven.map(({ restsOn }) => reads.filter(({ id }) => restsOn.includes(id)));
        return !said.some((two) => {
          const [least, most] = [two[0], two.at(-1)];
          if (least === undefined || most === undefined) return false;
          return reads.every(
            (each) =>
              (each.value >= least.value && each.value <= most.value) ||
              two.some(({ id }) => id === each.id || together(id, each.id)),
          );
        });
      })
      .flatMap((place) => twoOf(place, readings));
  };
