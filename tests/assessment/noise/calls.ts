import type { Entry } from './play.ts';

/*
 * Ten calls about noise, a loosening adjuster or a failure. What is expected follows from a desk's own rule for such
 * calls: nut moved, the lock; nut held and the gap grew, wear on that valve; all of them, the oil or how they were set;
 * lash is read on the base circle, so that a worn nose never shows in it; a gap that grew after it was set again, metal:
 * nobody turns it. Common practice, no published source; that one valve which keeps loosening is a lifter, a pushrod
 * or a rocker is a race shop's note on lash. Gaps and lobes are invented.
 */

export interface NoiseCall {
  readonly said: string;
  readonly goal?: string;
  readonly entries: readonly Entry[];
  /** Causes with least against them, in their order. */
  readonly left: readonly string[];
  /** Of these, those with most for them. */
  readonly first?: readonly string[];
  readonly next: string;
  readonly turns: boolean;
  /** The check that parts the first two. */
  readonly nearest?: string;
  readonly stop?: readonly string[];
  readonly headline?: RegExp;
}

const told = (ask: string, answer: string, more: Partial<Entry> = {}): Entry => ({
  ask: `noise-${ask}`,
  answer,
  ...more,
});
const six = told('which', 'one', { cylinder: 6, valve: 'intake' });
const nothingBroken = told('signs', 'none');
const unknown = (...asks: string[]): Entry[] => asks.map((ask) => told(ask, 'not-known'));

const PHONE = ['oil', 'heat', 'hours', 'speed', 'history', 'set-screw', 'nut-used', 'stud'];

const line = (
  cylinder: number,
  inches: string,
  moment: 'set' | 'found',
  readOn: string,
  nut: string,
): Entry => ({
  lash: { cylinder, valve: 'intake', lash: `${inches} in`, moment, engine: 'cold', nut, readOn },
});
/** .018 to .026: .008 where .004 is ordinary. */
const grew = (cylinder: number, nut: string): Entry[] => [
  line(cylinder, '.018', 'set', '2026-02-01', 'not-looked'),
  line(cylinder, '.026', 'found', '2026-02-20', nut),
];

const LOCKING = ['nut-lock', 'stud-top', 'stud-thread'];
const WEAR = ['pushrod', 'tip', 'roller', 'trunnion', 'lifter', 'lobe'];

export const CALLS: readonly NoiseCall[] = [
  {
    said: 'Number six ticks, and the nut has moved.',
    entries: [nothingBroken, six, told('nut', 'moved: half a turn')],
    left: [...LOCKING, 'stud', 'spring'],
    first: LOCKING,
    next: 'noise-set-screw',
    turns: false,
    nearest: 'noise-set-screw',
    headline:
      /^No verdict\. By the 2 facts on record nothing speaks against the locking \(3 causes, 2 for each\), the stud itself/,
  },
  {
    said: 'The nut held, and the gap grew. The stud stands firm; the rest nobody knows.',
    entries: [
      nothingBroken,
      six,
      ...grew(6, 'held'),
      ...unknown(...PHONE.filter((ask) => ask !== 'stud')),
      told('stud', 'firm'),
    ],
    left: [...WEAR, 'spring'],
    first: WEAR,
    next: 'noise-pushrod',
    turns: false,
    nearest: 'noise-pushrod',
  },
  {
    said: 'A call to set adjusters, and one gap is found grown with its nut held.',
    goal: 'adjuster',
    entries: grew(6, 'held'),
    // Of one valve or all nothing was told: the growth speaks against the lock alone.
    left: [...WEAR, 'stud', 'spring', 'oil', 'setting'],
    next: 'noise-signs',
    turns: false,
  },
  {
    said: 'Held, grown, and pushrod, tip, roller and pivot were looked at: all sound.',
    entries: [
      nothingBroken,
      six,
      ...grew(6, 'held'),
      ...unknown(...PHONE.filter((ask) => ask !== 'stud')),
      told('stud', 'firm'),
      told('pushrod', 'smooth'),
      told('tip', 'smooth'),
      told('roller', 'free'),
      told('trunnion', 'smooth'),
    ],
    left: ['lifter', 'lobe', 'spring'],
    first: ['lifter', 'lobe'],
    next: 'lobe',
    turns: true,
    nearest: 'lobe',
  },
  {
    said: 'The same, and its lobe reads like its siblings.',
    entries: [
      nothingBroken,
      six,
      ...grew(6, 'held'),
      ...unknown(...PHONE.filter((ask) => ask !== 'stud')),
      told('stud', 'firm'),
      told('pushrod', 'smooth'),
      told('tip', 'smooth'),
      told('roller', 'free'),
      told('trunnion', 'smooth'),
      { lobes: { 4: '.3530', 5: '.3535', 6: '.3530', 7: '.3525' } },
    ],
    left: ['lifter', 'spring'],
    first: ['lifter'],
    // What the lifter gives away shows in the valve lift.
    next: 'rows',
    turns: true,
    headline: /nothing speaks against the lifter \(2 for\) and the spring at high speed \(0 for\)\.$/,
  },
  {
    said: 'All of them tick, and the oil is low.',
    entries: [nothingBroken, told('which', 'all'), told('oil', 'low: needle near the bottom')],
    left: ['oil', 'setting', 'spring'],
    first: ['oil'],
    next: 'noise-speed',
    turns: false,
    nearest: 'noise-hours',
  },
  {
    said: 'Three gaps were read since they were set, and all three grew.',
    entries: [...grew(2, 'held'), ...grew(6, 'held'), ...grew(7, 'held'), nothingBroken],
    left: ['oil', 'setting', 'spring'],
    first: ['oil', 'setting'],
    next: 'noise-which',
    turns: false,
    nearest: 'noise-oil',
  },
  {
    said: 'Number six, and there is metal in the filter.',
    entries: [six, told('signs', 'metal: bright flakes'), told('nut', 'held')],
    left: [...WEAR, 'stud', 'spring'],
    first: ['roller', 'trunnion', 'lifter', 'lobe'],
    next: 'under-sign-of-damage',
    turns: false,
    stop: ['stop:sign-of-damage:metal'],
  },
  {
    said: 'Set again, and it had grown once more; nobody wrote it down.',
    entries: [nothingBroken, six, told('nut', 'held'), told('history', 'grew-again')],
    left: ['pushrod', 'tip', 'roller', 'trunnion', 'lifter', 'lobe', 'stud'],
    next: 'under-lash-grew-again',
    turns: false,
    stop: ['stop:lash-grew-again:grew-again'],
  },
  {
    said: 'Nobody knows anything.',
    entries: unknown('signs', 'which', 'nut', ...PHONE),
    left: [...LOCKING, 'stud', ...WEAR, 'spring', 'oil', 'setting'],
    next: 'lash',
    turns: true,
  },
];

/** The orders in which the same call is entered; what is said of one question twice keeps its turn, and here nothing is. */
export const ORDERS: readonly ((entries: readonly Entry[]) => readonly Entry[])[] = [
  (entries) => entries,
  (entries) => entries.toReversed(),
  (entries) => [...entries.filter((_, at) => at % 2 === 1), ...entries.filter((_, at) => at % 2 === 0)],
];
