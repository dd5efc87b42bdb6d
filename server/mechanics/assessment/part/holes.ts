import { defined } from '../../../../shared/defined.ts';
import { computation as fastenerForHole, holeCautions } from '../../computations/fastener-for-hole.ts';
import { halfWidthOf } from '../../identify/how-read.ts';
import { toolWithin } from '../../identify/tools.ts';
import { byText } from '../../kit/by-text.ts';
import { IN } from '../../kit/si.ts';
import { DEFAULT_READING_BAND, doubtBand } from '../../threads/hole-fit.ts';
import { THREADS } from '../../threads/thread-table.ts';
import type { HoleDetail, StudDetail } from './detail.ts';
import { type CountedReading, sized } from './doubts.ts';

type Thread = HoleDetail['threads'][number];

const SIZES = new Map(THREADS.map(({ designation, size }) => [designation, size]));

/** `7/16` of `7/16-20 UNF`, `M8` of `M8×1.25`. */
export const sizeName = (designation: string): string => SIZES.get(designation) ?? designation;

function fitOf(threads: readonly Thread[]): Pick<HoleDetail, 'word' | 'said'> {
  if (threads.some(({ fit }) => fit === 'agrees'))
    return { word: 'agrees', said: 'with the size it was made for, read a little small or large.' };
  return threads.some(({ fit }) => fit === 'cannot-tell')
    ? { word: 'cannot-tell', said: 'between sizes: try the stud or a drill shank by hand.' }
    : { word: 'differs', said: 'from every size that rockers are made for.' };
}

/** A tool coarser than a caliper widens the band in which nothing can be told, and agrees with nothing by itself. */
function bandOf(reading: CountedReading & { readonly size: number }) {
  const excess = halfWidthOf(reading) - toolWithin(reading.kind, 'caliper') * IN;
  if (excess <= 0) return undefined;
  const { below, above } = doubtBand(DEFAULT_READING_BAND);
  return { below: below + excess, above: above + excess };
}

/** Of the threads in reach those that the stud may have, where it has one of them: by its pitch, or as it was named. */
function narrowed(all: readonly Thread[], stud: StudDetail | undefined): readonly Thread[] {
  const may = new Set(stud?.named);
  const both = all.filter(({ designation, fit }) => fit !== 'differs' && may.has(designation));
  return both.length === 0 ? all : both;
}

/** A stud or a drill shank was tried through the hole: its size is in reach, and no other. */
const asTried = (all: readonly Thread[], { tried }: CountedReading): readonly Thread[] =>
  tried === undefined
    ? all
    : all.map((each) => ({
        ...each,
        fit:
          sizeName(each.designation) === tried
            ? each.fit === 'differs'
              ? 'cannot-tell'
              : each.fit
            : 'differs',
      }));

const triedSaid = (tried: string): string =>
  tried === 'none'
    ? 'from every usual size: no stud or drill shank that was tried fits it.'
    : `by reading, and a ${tried} stud or drill shank goes through it without play.`;

export const HOLE = 'hole-across-trunnion';
/** The smallest first, so that the one that is named says nothing of the order of entry. */
const bySize = <Reading extends { readonly size: number; readonly readAs: string }>(
  all: readonly Reading[],
) => all.toSorted((a, b) => a.size - b.size || byText(a.readAs, b.readAs));

/** What each reading of the hole says of the stud or bolt; of those in reach the threads that the stud may have. */
export const holesOf = (readings: readonly CountedReading[], stud?: StudDetail): HoleDetail[] =>
  bySize(sized(readings, HOLE)).map((reading, _, holes) => {
    const twice = holes.length > 1;
    const readingBand = bandOf(reading);
    const given = { hole: reading.size, ...defined({ readingBand }) };
    const result = fastenerForHole.compute(given);
    const read = result.fasteners.map(
      ({ designation, fit, offset, nominal }): Thread => ({
        designation,
        fit: readingBand !== undefined && fit === 'agrees' ? 'cannot-tell' : fit,
        offset,
        madeFor: nominal,
      }),
    );
    const all = asTried(read, reading);
    const inReach = narrowed(all, stud).filter(({ fit }) => fit !== 'differs');
    const told = stud?.by.includes('pitch') === true && inReach.length === 1;
    return {
      entryId: reading.id,
      readAs: reading.readAs,
      ...fitOf(all),
      ...(reading.tried === undefined ? {} : { said: triedSaid(reading.tried), tried: reading.tried }),
      threads: inReach,
      others: all.filter(({ fit }) => fit === 'differs').slice(0, 2),
      ...defined({ ask: told || inReach.length === 0 ? undefined : result.ask }),
      // What was tried already is not asked for once more.
      cautions: reading.tried === undefined ? holeCautions(result, { readBothWays: twice }) : [],
    };
  });

/** Threads that agree, or else all in reach of the reading. */
export function namedThreads({ threads }: HoleDetail): string[] {
  const agreeing = threads.filter(({ fit }) => fit === 'agrees');
  return (agreeing.length > 0 ? agreeing : threads).map(({ designation }) => designation);
}

/**
 * The threads that all of them may have been made for. A reading that agrees with a size is not undone by one too coarse
 * to agree with anything, where that one has the same size in reach.
 */
export function threadsNamed(holes: readonly HoleDetail[]): string[] {
  const agreeing = new Set(holes.filter(({ word }) => word === 'agrees').flatMap(namedThreads));
  const counting = holes.filter(
    ({ word, threads }) => word === 'agrees' || !threads.some(({ designation }) => agreeing.has(designation)),
  );
  return [...new Set(counting.flatMap(namedThreads))].sort();
}

/** Every thread that the holes read so far may have been made for. */
export const threadsOfHoles = (readings: readonly CountedReading[]): string[] => [
  ...new Set(holesOf(readings).flatMap(({ threads }) => threads.map(({ designation }) => designation))),
];
