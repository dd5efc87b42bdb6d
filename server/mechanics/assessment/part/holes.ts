import { defined } from '../../../../shared/defined.ts';
import { computation as fastenerForHole } from '../../computations/fastener-for-hole.ts';
import { halfWidthOf } from '../../identify/how-read.ts';
import { toolWithin } from '../../identify/tools.ts';
import { IN } from '../../kit/si.ts';
import { DEFAULT_READING_BAND, doubtBand } from '../../threads/hole-fit.ts';
import { readDesignation } from '../../threads/read-designation.ts';
import type { Headline } from '../assessment.ts';
import { listed, subjectSaid, upperFirst } from '../common/said.ts';
import type { HoleDetail, StudDetail } from './detail.ts';
import { type CountedReading, sized } from './doubts.ts';
import type { InHand } from './in-hand.ts';

type Thread = HoleDetail['threads'][number];

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

/** The pitch of the stud that came out, where its thread is settled. */
function pitchOf(stud: StudDetail | undefined): number | undefined {
  if (stud?.pitch === undefined || stud.named.length === 0) return undefined;
  const pitches = stud.named.flatMap((designation) => {
    const read = readDesignation(designation);
    return read.ok ? [read.thread.pitch] : [];
  });
  return new Set(pitches).size === 1 ? pitches[0] : undefined;
}

/** What each reading of the hole says of the stud or bolt; with the pitch known, of threads of that pitch alone. */
export const holesOf = (readings: readonly CountedReading[], stud?: StudDetail): HoleDetail[] =>
  sized(readings, 'hole-across-trunnion').map((reading) => {
    const readingBand = bandOf(reading);
    const given = { hole: reading.size, ...defined({ readingBand, pitch: pitchOf(stud) }) };
    const result = fastenerForHole.compute(given);
    const all = result.fasteners.map(
      ({ designation, fit, offset, nominal }): Thread => ({
        designation,
        fit: readingBand !== undefined && fit === 'agrees' ? 'cannot-tell' : fit,
        offset,
        madeFor: nominal,
      }),
    );
    const inReach = all.filter(({ fit }) => fit !== 'differs');
    return {
      entryId: reading.id,
      readAs: reading.readAs,
      ...fitOf(all),
      threads: inReach,
      others: all.filter(({ fit }) => fit === 'differs').slice(0, 2),
      ...defined({ ask: result.ask }),
      cautions: fastenerForHole.cautions(given, result),
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
function threadsNamed(holes: readonly HoleDetail[]): string[] {
  const agreeing = new Set(holes.filter(({ word }) => word === 'agrees').flatMap(namedThreads));
  const counting = holes.filter(
    ({ word, threads }) => word === 'agrees' || !threads.some(({ designation }) => agreeing.has(designation)),
  );
  return [...new Set(counting.flatMap(namedThreads))].sort();
}

/** The threads that the holes read so far may have been made for. */
export const threadsOfHoles = (readings: readonly CountedReading[]): string[] =>
  threadsNamed(holesOf(readings));

/** The hole suggests a fastener; its thread decides, and names it once it was read. */
export function holeHeadline(
  { about, key }: InHand,
  holes: readonly HoleDetail[],
  stud: StudDetail | undefined,
): Headline[] {
  const once = threadsNamed(holes);
  const of = about.name === undefined ? 'The' : `${subjectSaid(about)}: the`;
  const headline = (sentence: string): Headline[] => [
    { id: `headline:${key}:fastener`, about, step: 'identify', sentence: upperFirst(sentence) },
  ];
  if (stud !== undefined && stud.lacks === undefined && stud.named.length > 0) {
    const goes = stud.named.filter((designation) => once.includes(designation));
    const said = listed(goes.length > 0 ? goes : stud.named).replace(' and ', ' or ');
    const hole = once.length === 0 ? 'the hole is still to read' : 'the hole goes with it';
    if (once.length === 0 || goes.length > 0)
      return headline(`${of} thread that came out is ${said}; ${hole}.`);
    return headline(`${of} thread that came out is ${said}; the hole does not go with it.`);
  }
  if (once.length === 0 && stud?.lacks !== undefined) {
    const read = stud.pitch === undefined ? 'diameter' : 'pitch';
    const goes =
      stud.named.length === 0
        ? 'no ordinary thread of rockers'
        : listed(stud.named).replace(/ and (?=[^ ]+ ?[^ ]*$)/, ' or ');
    return headline(`${of} ${read} of the thread that came out is that of ${goes}. ${stud.lacks}`);
  }
  if (once.length === 0) return [];
  return headline(`${of} hole suggests ${listed(once).replace(' and ', ' or ')}; the thread proves it.`);
}
