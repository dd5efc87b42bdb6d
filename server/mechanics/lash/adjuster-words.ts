import type { ValveGear } from '../../../shared/schemas/words.ts';

/** What sets the gap, as far as it is known. */
export type AdjusterKind = 'stud' | 'pedestal' | 'shaft' | 'cam-rocker' | 'follower' | 'bucket' | 'not-known';

interface AdjusterWords {
  /** What moves where the setting lets go, as one word or two: `nut`. */
  readonly part: string;
  /** What holds the setting, as things to look at. */
  readonly lock: string;
  /** What wears between cam and stem, as things to look at. */
  readonly wears: string;
  /** What a line is drawn over before anything is touched. */
  readonly line: string;
  /** What is turned to set the gap. */
  readonly turned: string;
  /** What is looked at where it let go. */
  readonly letGo: string;
  /** What is done first before it may run again. */
  readonly mend: string;
  /** What can let a gap change by itself: a lock, or nothing, where a shim lies in it. */
  readonly lets: 'lock' | 'nothing';
  /** What is asked of a gap that grew, where no lock can have let go. */
  readonly grew?: { readonly ask: string; readonly test: string };
}

const PUSHROD = 'the stem’s tip, the roller, both ends of the pushrod and the cup';
const SCREW: Omit<AdjusterWords, 'wears'> = {
  part: 'lock nut',
  turned: 'screw',
  lock: 'the adjusting screw and lock nut',
  line: 'lock nut and screw',
  letGo: 'look at the lock nut, both threads, and whether the nut was used before.',
  mend: 'Look at the screw’s thread and its lock nut, fit a new nut, and see that it holds.',
  lets: 'lock',
};
const NEUTRAL: Omit<AdjusterWords, 'wears'> = {
  part: 'adjuster’s lock',
  turned: 'adjuster',
  lock: 'the adjuster and its lock',
  line: 'the adjuster and what it sits in',
  letGo: 'look at the adjuster’s lock and threads, and whether a lock was used again.',
  mend: 'Look at the adjuster’s thread and its lock, change what is worn, and see that it holds.',
  lets: 'lock',
};

/** Source: how each mounting is made, general knowledge from memory, no published source. */
export const ADJUSTER_WORDS: Readonly<Record<AdjusterKind, AdjusterWords>> = {
  stud: {
    part: 'nut',
    turned: 'nut',
    lock: 'nut and stud',
    wears: PUSHROD,
    line: 'nut and stud',
    letGo:
      'look at the set-screw, whether the stud’s top is flat, the threads, and whether the nut was used before.',
    mend: 'Look at the stud’s top and thread, fit a new nut, and see that it holds.',
    lets: 'lock',
  },
  pedestal: {
    part: 'bolt',
    turned: 'bolt',
    lock: 'the pedestal and its bolt',
    wears: PUSHROD,
    line: 'the bolt and its pedestal',
    letGo: 'look at the bolt, its threads and the pedestal’s seat.',
    mend: 'Look at the bolt, its threads and the pedestal’s seat, and see that it holds.',
    lets: 'lock',
  },
  shaft: { ...SCREW, wears: PUSHROD },
  'cam-rocker': { ...SCREW, wears: 'the stem’s tip, the rocker’s pad or roller, and the lobe' },
  follower: {
    ...NEUTRAL,
    part: 'pivot',
    lock: 'the follower and its pivot',
    wears: 'the stem’s tip, the follower’s pad or roller, and the lobe',
  },
  bucket: {
    ...NEUTRAL,
    part: 'shim',
    lock: 'the shim',
    lets: 'nothing',
    grew: {
      ask: 'Is something wearing on this valve, or did the shim not seat?',
      test: 'look whether the shim is seated and whole, at the bucket’s face and at the lobe.',
    },
    wears: 'the bucket’s face, the stem’s tip and the lobe',
  },
  'not-known': { ...NEUTRAL, wears: 'the stem’s tip, and the parts between it and the cam' },
};

/** What sets the gap of an engine: its valve gear, and of rockers on pushrods how they are mounted. */
export function adjusterKind(engine: {
  readonly gear?: ValveGear | undefined;
  readonly mounting?: 'stud' | 'pedestal' | 'shaft' | undefined;
}): AdjusterKind {
  const { gear = 'pushrod', mounting = 'not-known' } = engine;
  if (gear === 'finger-follower') return 'follower';
  return gear === 'pushrod' ? mounting : gear;
}

const STATES = {
  'not-looked': 'not looked at',
  held: 'had not moved',
  moved: 'had moved',
} as const;

/** What the log says of it: `nut had not moved`. */
export const partSaid = (kind: AdjusterKind, state: keyof typeof STATES): string =>
  `${ADJUSTER_WORDS[kind].part} ${STATES[state]}`;

const ENDS = 'the stem’s tip and both ends of the pushrod';
/** Photographed as it stands, before anything is touched. */
const PHOTOGRAPHED: Readonly<Record<AdjusterKind, string>> = {
  stud: `draw a line over nut and stud, and photograph the nut, ${ENDS}`,
  pedestal: `draw a line over the bolt and its pedestal, and photograph both, ${ENDS}`,
  shaft: `draw a line over lock nut and screw, and photograph both, ${ENDS}`,
  'cam-rocker':
    'draw a line over lock nut and screw, and photograph both, the rocker’s pad and the stem’s tip',
  follower: 'photograph the follower, its pivot and the stem’s tip',
  bucket: 'photograph the bucket’s face, its shim and the lobe',
  'not-known': 'draw a line over the adjuster and what it sits in, and photograph both and the stem’s tip',
};

/** What is done at once where a gap grew again, with nothing turned. */
export const firstAtGrowth = (kind: AdjusterKind): string => `Do not set it again: ${PHOTOGRAPHED[kind]}`;

/** What is looked at of a gap that grew, with nothing turned. */
export const lookAt = (kind: AdjusterKind): string =>
  `look at ${ADJUSTER_WORDS[kind].lock}, ${ADJUSTER_WORDS[kind].wears}`;
