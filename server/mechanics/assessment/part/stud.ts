import { defined } from '../../../../shared/defined.ts';
import { asEntered } from '../../../../shared/quantities/as-entered.ts';
import { IN } from '../../kit/si.ts';
import { THREADS, type Thread } from '../../threads/thread-table.ts';
import { listed } from '../common/said.ts';
import type { HoleDetail, StudDetail, StudThread } from './detail.ts';
import type { CountedReading } from './doubts.ts';
import { eitherSaid, sizeWithin } from './size-said.ts';
import { fitsPitch, type Read, type ReadOf, readOf, sizeOfReads, WORN } from './thread-read.ts';

type Word = StudThread['word'];

function diameterFit({ majorMin, majorMax }: Thread, { value, within }: Read): Word {
  if (value > majorMax + within || value < majorMin - within - WORN) return 'differs';
  return value < majorMin - within ? 'cannot-tell' : 'agrees';
}

/** Readings that go together all have to fit; of those that do not either may be the right one, and tells nothing. */
function fitOf(read: ReadOf | undefined, fit: (one: Read) => Word): Word {
  if (read === undefined) return 'cannot-tell';
  const words = read.reads.map(fit);
  if (read.apart) return words.every((word) => word === 'differs') ? 'differs' : 'cannot-tell';
  if (words.includes('differs')) return 'differs';
  return words.includes('cannot-tell') ? 'cannot-tell' : 'agrees';
}

function wordOf(thread: Thread, diameter: ReadOf | undefined, pitch: ReadOf | undefined): Word {
  const ofPitch = fitOf(pitch, (read) => (fitsPitch(thread, read) ? 'agrees' : 'differs'));
  const ofDiameter = fitOf(diameter, (read) => diameterFit(thread, read));
  if (ofPitch === 'differs' || ofDiameter === 'differs') return 'differs';
  return pitch?.apart === true ? 'cannot-tell' : ofDiameter;
}

const offBy = ({ majorMin, majorMax }: Thread, value: number): number =>
  value > majorMax ? value - majorMax : value < majorMin ? value - majorMin : 0;

/** Threads in reach; where none is, the two whose diameter is nearest, as differing. */
function threadsOf(diameter: ReadOf | undefined, pitch: ReadOf | undefined): StudThread[] {
  const [major, one] = [diameter, pitch].map((read) =>
    read === undefined || read.apart ? undefined : sizeOfReads(read).value,
  );
  const all = THREADS.map(
    (thread): StudThread => ({
      designation: thread.designation,
      word: wordOf(thread, diameter, pitch),
      ...defined({
        offset: major === undefined ? undefined : offBy(thread, major),
        pitchOffset: one === undefined ? undefined : one - thread.pitch,
      }),
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

const asRead = ({ reads }: ReadOf): string => listed(reads.map(({ readAs }) => asEntered(readAs)));

/** `.0500 in a thread`, with its half-width and the threads to the inch; readings apart each as it was read. */
function pitchSaid(pitch: ReadOf): string {
  if (pitch.apart) return `two pitches, ${asRead(pitch)}`;
  const { value, within } = sizeOfReads(pitch);
  return `a pitch of ${sizeWithin(value, within)}, ${Number((IN / value).toPrecision(3))} to the inch`;
}

function diameterSaid(diameter: ReadOf): string {
  if (diameter.apart) return `two diameters, ${asRead(diameter)}`;
  const { value, within } = sizeOfReads(diameter);
  return `${sizeWithin(value, within)} over the thread`;
}

/** What is still to read, or to say. */
function lackOf(diameter: ReadOf | undefined, pitch: ReadOf | undefined): string | undefined {
  if (pitch?.apart === true) return 'The pitches cannot both be right: say which is, or count it again.';
  if (diameter?.apart === true) return 'The diameters cannot both be right: say which is, or read it again.';
  if (diameter === undefined) return 'The diameter over the thread is still to read.';
  return pitch === undefined
    ? 'The pitch is still to read: threads counted over a length, or a thread gauge.'
    : undefined;
}

/** What the stud or bolt that came out is, by the diameter over its thread and its pitch. */
export function studOf(readings: readonly CountedReading[]): StudDetail | undefined {
  const [diameter, pitch] = [readOf(readings, 'stud-diameter'), readOf(readings, 'stud-pitch')];
  if (diameter === undefined && pitch === undefined) return undefined;
  const threads = threadsOf(diameter, pitch);
  const named = threads.filter(({ word }) => word !== 'differs').map(({ designation }) => designation);
  const read = [
    ...(diameter === undefined ? [] : [diameterSaid(diameter)]),
    ...(pitch === undefined ? [] : [pitchSaid(pitch)]),
  ];
  const measures = `The stud or bolt that came out has ${listed(read)}`;
  return {
    entryIds: [diameter, pitch].flatMap((each) => each?.reads.map(({ id }) => id) ?? []),
    by: [
      ...(diameter === undefined ? [] : ['diameter' as const]),
      ...(pitch === undefined ? [] : ['pitch' as const]),
    ],
    apart: diameter?.apart === true || pitch?.apart === true,
    threads,
    named,
    ...defined({
      pitch: pitch === undefined || pitch.apart ? undefined : sizeOfReads(pitch),
      lacks: lackOf(diameter, pitch),
    }),
    measures,
    sentence: `${measures}: ${named.length === 0 ? 'no ordinary thread of rockers' : eitherSaid(named)}.`,
  };
}

/** A stud that is not wholly read, with the hole that it goes through: of its threads those that the hole takes. */
export function throughHole(stud: StudDetail, holes: readonly HoleDetail[]): StudDetail {
  if (stud.lacks === undefined || holes.length === 0) return stud;
  const taken = new Set(holes.flatMap(({ threads }) => threads.map(({ designation }) => designation)));
  const named = stud.named.filter((designation) => taken.has(designation));
  if (named.length === 0 || named.length === stud.named.length) return stud;
  return {
    ...stud,
    named,
    threads: stud.threads.filter(({ designation }) => taken.has(designation)),
    sentence: `${stud.measures}; of its threads the hole takes ${eitherSaid(named)}.`,
  };
}
