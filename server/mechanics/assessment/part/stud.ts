import { asEntered } from '../../../../shared/quantities/as-entered.ts';
import { halfWidthOf } from '../../identify/how-read.ts';
import { IN } from '../../kit/si.ts';
import { THREADS, type Thread } from '../../threads/thread-table.ts';
import { listed } from '../common/said.ts';
import type { StudDetail, StudThread } from './detail.ts';
import { AS_READ, amongOf, type CountedReading, choice, type PartDoubt, sized, without } from './doubts.ts';
import { sizeSaid, sizeWithin } from './size-said.ts';

/** A pitch read by gauge or rule is a thread's own within this share of it, at the finest. */
const PITCH_SLACK = 0.01;
/** A thread that has run reads this much under its least, and no more (common practice, no published source). */
const WORN = 0.004 * IN;

/** What a reading says of a size: the middle of what was read, and how far off it may be. */
interface Read {
  readonly value: number;
  readonly within: number;
  readonly ids: readonly string[];
}

function together(reads: readonly Omit<Read, 'ids'>[], ids: readonly string[]): Read | undefined {
  if (reads.length === 0) return undefined;
  const low = Math.min(...reads.map(({ value, within }) => value - within));
  const high = Math.max(...reads.map(({ value, within }) => value + within));
  return { value: (low + high) / 2, within: (high - low) / 2, ids };
}

const readOf = (readings: readonly CountedReading[], kind: string): Read | undefined => {
  const own = sized(readings, kind);
  return together(
    own.map((each) => {
      const threads = each.count ?? 1;
      return { value: each.size / threads, within: halfWidthOf(each) / threads };
    }),
    own.map(({ id }) => id),
  );
};

const fitsPitch = ({ pitch }: Thread, read: Pick<Read, 'value' | 'within'>): boolean =>
  Math.abs(read.value - pitch) <= Math.max(read.within, PITCH_SLACK * pitch);

function diameterFit({ majorMin, majorMax }: Thread, { value, within }: Read): StudThread['word'] {
  if (value > majorMax + within || value < majorMin - within - WORN) return 'differs';
  return value < majorMin - within ? 'cannot-tell' : 'agrees';
}

function fitOf(thread: Thread, diameter: Read | undefined, pitch: Read | undefined): StudThread['word'] {
  if (pitch !== undefined && !fitsPitch(thread, pitch)) return 'differs';
  return diameter === undefined ? 'cannot-tell' : diameterFit(thread, diameter);
}

const offBy = ({ majorMin, majorMax }: Thread, { value }: Read): number =>
  value > majorMax ? value - majorMax : value < majorMin ? value - majorMin : 0;

/** Threads in reach; where none is, the two whose diameter is nearest, as differing. */
function threadsOf(diameter: Read | undefined, pitch: Read | undefined): StudThread[] {
  const all = THREADS.map(
    (thread): StudThread => ({
      designation: thread.designation,
      word: fitOf(thread, diameter, pitch),
      ...(diameter === undefined ? {} : { offset: offBy(thread, diameter) }),
      ...(pitch === undefined ? {} : { pitchOffset: pitch.value - thread.pitch }),
    }),
  );
  const inReach = all.filter(({ word }) => word !== 'differs');
  if (inReach.length === 0)
    return all.toSorted((a, b) => Math.abs(a.offset ?? 0) - Math.abs(b.offset ?? 0)).slice(0, 2);
  const agreeing = inReach.filter(({ word }) => word === 'agrees').length;
  return agreeing < 2
    ? inReach
    : inReach.map((each) => (each.word === 'agrees' ? { ...each, word: 'cannot-tell' } : each));
}

/** `.0500 in a thread`, with its half-width and the threads to the inch. */
const pitchSaid = ({ value, within }: Read): string =>
  `a pitch of ${sizeWithin(value, within)}, ${Number((IN / value).toPrecision(3))} to the inch`;

/** What the stud or bolt that came out is, by the diameter over its thread and its pitch. */
export function studOf(readings: readonly CountedReading[]): StudDetail | undefined {
  const diameter = readOf(readings, 'stud-diameter');
  const pitch = readOf(readings, 'stud-pitch');
  if (diameter === undefined && pitch === undefined) return undefined;
  const threads = threadsOf(diameter, pitch);
  const named = threads.filter(({ word }) => word !== 'differs').map(({ designation }) => designation);
  const read = [
    ...(diameter === undefined ? [] : [`${sizeWithin(diameter.value, diameter.within)} over the thread`]),
    ...(pitch === undefined ? [] : [pitchSaid(pitch)]),
  ];
  const lacks =
    diameter === undefined
      ? 'The diameter over the thread is still to read.'
      : pitch === undefined
        ? 'The pitch is still to read: threads counted over a length, or a thread gauge.'
        : undefined;
  return {
    entryIds: [...(diameter?.ids ?? []), ...(pitch?.ids ?? [])],
    threads,
    named,
    ...(pitch === undefined ? {} : { pitch: { value: pitch.value, within: pitch.within } }),
    ...(lacks === undefined ? {} : { lacks }),
    sentence: `The stud or bolt that came out has ${listed(read)}: ${named.length === 0 ? 'no ordinary thread of rockers' : listed(named).replace(/ and (?=[^ ]+ ?[^ ]*$)/, ' or ')}.`,
  };
}

/** Crests were counted where the gaps between them count: one fewer pitch goes into the length. */
export const crestsCounted = (readings: readonly CountedReading[]): PartDoubt[] =>
  sized(readings, 'stud-pitch').flatMap((each): PartDoubt[] => {
    const { id, count, size } = each;
    if (count === undefined || count < 3) return [];
    const at = (threads: number) => ({ value: size / threads, within: halfWidthOf(each) / threads });
    const fits = (threads: number) => THREADS.some((thread) => fitsPitch(thread, at(threads)));
    if (fits(count) || !fits(count - 1)) return [];
    return [
      {
        code: 'crests-counted',
        ask: `${asEntered(each.readAs)} is no thread of rockers; ${count - 1} over it would be. Were the crests counted, the first one too?`,
        test: 'count from one crest to the next as one, and lay the rule on crests at both ends',
        restsOn: [id],
        choices: [
          choice('crests', 'Yes, crests were counted', `It counts as ${count - 1} over ${sizeSaid(size)}.`),
          AS_READ,
        ],
        effect: (now, chosen) =>
          chosen === 'crests'
            ? now.map((other) =>
                other.id === id
                  ? { ...other, count: count - 1, countsAs: `${count - 1} over ${sizeSaid(size)}` }
                  : other,
              )
            : now,
      },
    ];
  });

const sizeName = (designation: string): string => designation.split(/[-×]/)[0] ?? designation;

/** A stud whose size the hole was not made for: asked whether it is this part's. */
export const studAgainstHole =
  (holeThreads: (readings: readonly CountedReading[]) => readonly string[]) =>
  (readings: readonly CountedReading[]): PartDoubt[] => {
    const stud = studOf(readings);
    const holes = holeThreads(readings);
    if (stud === undefined || stud.lacks !== undefined || stud.named.length === 0 || holes.length === 0)
      return [];
    const sizes = new Set(holes.map(sizeName));
    if (stud.named.some((designation) => sizes.has(sizeName(designation)))) return [];
    const ids = [...stud.entryIds].sort();
    return [
      {
        code: 'stud-against-hole',
        ask: `The stud that came out is ${listed(stud.named).replace(' and ', ' or ')}, and the hole was made for ${listed([...sizes].sort()).replace(' and ', ' or ')}. Is it the stud of this part?`,
        test: 'slide the stud through the hole by hand',
        restsOn: ids,
        among: amongOf(ids),
        choices: [
          choice('found', 'No, it is of another part', 'The stud does not count for this part.'),
          choice('not-found', 'Yes, it is', 'Both count as they were read.'),
        ],
        effect: (now, chosen) => (chosen === 'found' ? without(now, ids) : now),
      },
    ];
  };
