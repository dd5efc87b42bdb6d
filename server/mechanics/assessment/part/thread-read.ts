import { halfWidthOf } from '../../identify/how-read.ts';
import { allowance, share } from '../../kit/allowances.ts';
import { THREADS, type Thread } from '../../threads/thread-table.ts';
import { type CountedReading, sized } from './doubts.ts';

/** A pitch read by gauge or rule is a thread's own within this share of it, at the finest. */
const PITCH_SLACK = share('pitch-read');
/** A thread that has run reads this much under its least, and no more. */
export const WORN = allowance('thread-worn');

/** What a reading says of a size, and how far off it may be; of a pitch that was counted, of one thread. */
export interface Read {
  readonly id: string;
  readonly readAs: string;
  readonly value: number;
  readonly within: number;
}

/** Readings of one size. `apart`: they cannot both be right, and no figure is made of them. */
export interface ReadOf {
  readonly reads: readonly Read[];
  readonly apart: boolean;
}

/** The smallest first. */
export const readsOf = (readings: readonly CountedReading[], kind: string): Read[] =>
  sized(readings, kind)
    .map((each): Read => {
      const { id, readAs, size, count = 1 } = each;
      return { id, readAs, value: size / count, within: halfWidthOf(each) / count };
    })
    .toSorted((a, b) => a.value - b.value);

export const fitsPitch = ({ pitch }: Thread, { value, within }: Pick<Read, 'value' | 'within'>): boolean =>
  Math.abs(value - pitch) <= Math.max(within, PITCH_SLACK * pitch);

/** Two pitches are one where they reach each other, and no thread of the table goes with one of them alone. */
function onePitch(a: Read, b: Read): boolean {
  if (Math.abs(a.value - b.value) > a.within + b.within + PITCH_SLACK * a.value) return false;
  const fits = THREADS.filter((thread) => fitsPitch(thread, a) || fitsPitch(thread, b));
  return fits.length === 0 || fits.some((thread) => fitsPitch(thread, a) && fitsPitch(thread, b));
}

/** A worn thread is not worn alike over its length. */
const oneDiameter = (a: Read, b: Read): boolean => Math.abs(a.value - b.value) <= a.within + b.within + WORN;

/** Whether two readings of what goes with a part, its stud or its stem, can both be right. */
export const goTogether = (kind: string): ((a: Read, b: Read) => boolean) =>
  kind === 'stud-pitch' ? onePitch : oneDiameter;

export function readOf(readings: readonly CountedReading[], kind: string): ReadOf | undefined {
  const reads = readsOf(readings, kind);
  if (reads.length === 0) return undefined;
  const together = goTogether(kind);
  const apart = reads.some((one, at) => reads.slice(at + 1).some((other) => !together(one, other)));
  return { reads, apart };
}

/** The middle of readings that go together, no finer than they are apart. */
export function sizeOfReads({ reads }: ReadOf): Pick<Read, 'value' | 'within'> {
  const low = Math.min(...reads.map(({ value, within }) => value - within));
  const high = Math.max(...reads.map(({ value, within }) => value + within));
  return { value: (low + high) / 2, within: (high - low) / 2 };
}
