import type { EngineTold, Entry } from './play.ts';

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
  readonly engine?: EngineTold;
  readonly entries: readonly Entry[];
  /** Causes with least against them, in their order. */
  readonly left: readonly string[] | 'any';
  /** Of these, those with most for them. */
  readonly first?: readonly string[];
  readonly next: string;
  readonly turns: boolean | 'any';
  readonly stopSaid?: RegExp;
  /** Checks that there are none of. */
  readonly checksNot?: readonly string[];
  /** The check that parts the first two. */
  readonly nearest?: string;
  readonly stop?: readonly string[];
  /** Why nobody runs it. */
  readonly notToRun?: readonly RegExp[];
  /** Said in the action that is next. */
  readonly sentence?: RegExp;
  /** Codes of questions of the first step that are asked. */
  readonly contact?: boolean;
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
    left: [...LOCKING, 'stud', 'spring', 'touching'],
    first: LOCKING,
    notToRun: [/^Do not run it: the nut has moved\.$/],
    contact: true,
    next: 'noise-set-screw',
    turns: false,
    nearest: 'noise-set-screw',
    headline:
      /^No verdict\. Found: the nut has moved\. Most speaks for the locking\. What would tell: the set-screw\.$/,
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
    left: [...WEAR, 'spring', 'touching'],
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
    left: [...WEAR, 'stud', 'spring', 'touching', 'oil', 'setting'],
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
    said: 'The same, and its lobe reads like the others.',
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
    headline: /^No verdict\. Most speaks for the lifter\.$/,
  },
  {
    said: 'All of them tick, and the oil is low.',
    entries: [nothingBroken, told('which', 'all'), told('oil', 'low: needle near the bottom')],
    left: ['oil', 'setting', 'spring', 'touching'],
    first: ['oil'],
    notToRun: [/^Do not run it: the oil, or its pressure, is low\.$/],
    next: 'noise-speed',
    turns: false,
    nearest: 'noise-hours',
  },
  {
    said: 'Three gaps were read since they were set, and all three grew.',
    entries: [...grew(2, 'held'), ...grew(6, 'held'), ...grew(7, 'held'), nothingBroken],
    left: ['oil', 'setting', 'spring', 'touching'],
    first: ['oil', 'setting'],
    next: 'noise-which',
    turns: false,
    nearest: 'noise-oil',
  },
  {
    said: 'Number six, and there is metal in the filter.',
    entries: [six, told('signs', 'metal: bright flakes'), told('nut', 'held')],
    left: [...WEAR, 'stud', 'spring', 'touching'],
    first: ['roller', 'trunnion', 'lifter', 'lobe'],
    next: 'under-sign-of-damage',
    turns: false,
    stop: ['stop:sign-of-damage:metal'],
  },
  {
    said: 'Set again, and it had grown once more; nobody wrote it down.',
    entries: [nothingBroken, six, told('nut', 'held'), told('history', 'grew-again')],
    left: ['pushrod', 'tip', 'roller', 'trunnion', 'lifter', 'lobe', 'stud', 'touching'],
    next: 'under-lash-grew-again',
    turns: false,
    stop: ['stop:lash-grew-again:grew-again'],
  },
  {
    said: 'Nobody knows anything.',
    entries: unknown('signs', 'which', 'nut', ...PHONE),
    left: [...LOCKING, 'stud', ...WEAR, 'spring', 'touching', 'oil', 'setting'],
    // What is in the filter may not stay unknown: nothing is turned before it is looked at.
    next: 'noise-signs',
    turns: false,
    sentence: /^Open the filter and look at the oil before anything is turned/,
  },
  ...(
    [
      ['stud', 'moves: pulled up a sixteenth', 'moves', /the stud moves, leans or stands higher/],
      ['pushrod', 'bent', 'bent', /a pushrod is bent/],
      ['roller', 'pin-moved: on one side', 'pin-moved', /the roller’s pin has moved/],
      ['trunnion', 'missing: three of them', 'missing', /needles of the pivot’s bearing are missing/],
      ['nut', 'off', 'off', /a nut is off, or a rocker hangs loose/],
      ['trunnion', 'worn: three needles missing', 'words', /“three needles missing”/],
      ['roller', 'worn: pin stands out on one side', 'words', /“pin stands out on one side”/],
      ['pushrod', 'worn, and it is bent', 'words', /“and it is bent”/],
      ['nut', 'moved: backed off a turn', 'words', /“backed off a turn”/],
    ] as const
  ).map(
    ([ask, answer, id, why]): NoiseCall => ({
      said: `Number six, nothing else broken, and of the ${ask}: ${answer}`,
      engine: { state: ask === 'nut' ? 'runs' : 'has-run' },
      entries: [nothingBroken, six, told(ask, answer)],
      left: 'any',
      next: 'under-part-damaged',
      turns: false,
      stop: [`stop:part-damaged:noise-${ask}:${id}`],
      sentence: /look at all the others like it/,
      stopSaid: why,
      contact: true,
    }),
  ),
  {
    said: 'The pushrod was looked at: not bent, no piece missing, worn in its cup.',
    entries: [nothingBroken, six, told('pushrod', 'worn: not bent, nothing missing')],
    left: 'any',
    first: ['pushrod'],
    next: 'noise-nut',
    turns: false,
    notToRun: [/^Do not run it: pushrod ends or cup are worn\.$/],
    headline: /^No verdict\. Found: pushrod ends or cup are worn\. Most speaks for pushrod ends and cup\./,
  },
  {
    said: 'It still runs and ticks.',
    engine: { state: 'runs', lifter: '' },
    entries: [nothingBroken],
    left: 'any',
    next: 'lifter',
    turns: false,
    notToRun: [/^Do not run it: shut it off, and leave it off until the cause is found\.$/],
    sentence: /^Are the lifters hydraulic or solid\?$/,
  },
  {
    said: 'It ticks, and nobody has said what holds its rockers: that is asked before anything of a stud.',
    engine: { mounting: '' },
    entries: [nothingBroken],
    left: 'any',
    next: 'mounting',
    turns: false,
    sentence: /^Are the rockers on studs, on pedestals or on a shaft\?$/,
    checksNot: ['noise-stud', 'noise-stud-top', 'noise-set-screw', 'noise-nut-used'],
  },
  {
    said: 'A hydraulic one ticks cold, nut held; the rest nobody knows: there is no lash to read.',
    engine: { lifter: 'hydraulic-flat' },
    entries: [
      nothingBroken,
      six,
      told('nut', 'held'),
      told('heat', 'cold'),
      ...unknown('oil', 'hours', 'speed', 'history', 'set-screw', 'nut-used', 'stud'),
    ],
    left: 'any',
    next: 'any',
    turns: 'any',
    checksNot: ['lash'],
  },
  {
    said: 'It is apart, the rocker is here: the gap as it was found is gone.',
    engine: { state: 'apart' },
    entries: [nothingBroken, six, told('tip', 'worn: mushroomed')],
    left: 'any',
    first: ['tip'],
    next: 'any',
    turns: 'any',
    notToRun: [/^Do not run it: the stem’s tip or its cap is worn\.$/],
    checksNot: ['lash'],
  },
  {
    said: 'Moved nut, loose screw, used nut, one valve, from the first running: the lock.',
    entries: [
      nothingBroken,
      six,
      told('nut', 'moved'),
      told('set-screw', 'loose'),
      told('nut-used', 'again'),
      told('hours', 'first-running'),
    ],
    left: 'any',
    first: ['nut-lock'],
    // Not the speed: whatever else remains is far behind; stud top and thread come once the gap is on record.
    next: 'lash',
    turns: true,
    contact: true,
    notToRun: [/^Do not run it: the nut has moved\.$/],
    headline: /^No verdict\. Found: the nut has moved\. Most speaks for the lock of the nut\./,
  },
  {
    said: 'A stud that stands higher leads, whatever is counted for the lock.',
    entries: [nothingBroken, six, told('nut', 'moved'), told('nut-used', 'again'), told('stud', 'moves')],
    left: 'any',
    first: ['stud'],
    next: 'under-part-damaged',
    turns: false,
    stop: ['stop:part-damaged:noise-stud:moves'],
    notToRun: [/the nut has moved/],
    contact: true,
    headline: /^No verdict\. Found: the stud moves, leans or stands higher/,
  },
];

/** The orders in which the same call is entered; what is said of one question twice keeps its turn, and here nothing is. */
export const ORDERS: readonly ((entries: readonly Entry[]) => readonly Entry[])[] = [
  (entries) => entries,
  (entries) => entries.toReversed(),
  (entries) => [...entries.filter((_, at) => at % 2 === 1), ...entries.filter((_, at) => at % 2 === 0)],
];
