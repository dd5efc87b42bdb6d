/** What a cause is told as, and who says that it happens. */
interface Cause {
  readonly said: string;
  readonly source: string;
}

const COMMON = 'common practice, no published source';

/** What noise, a loosening adjuster or a failure may come of, in the order in which a desk looks. */
export const CAUSES = {
  'nut-lock': {
    said: 'the lock of the nut',
    source: 'circle-track column on rocker adjusters: such nuts are not used again without end',
  },
  'stud-top': { said: 'the top of the stud', source: COMMON },
  'stud-thread': { said: 'the thread of the adjuster and its nut', source: COMMON },
  stud: { said: 'the stud itself', source: 'magazine case of studs that broke again' },
  pushrod: {
    said: 'pushrod ends and cup',
    source: 'race shop’s note on lash: one valve that keeps loosening',
  },
  tip: { said: 'the stem’s tip or its cap', source: COMMON },
  roller: { said: 'the roller or its pin', source: 'forum case of pins that moved out of their tips' },
  trunnion: { said: 'the bearing at the pivot', source: 'shop’s page on pivot bearings' },
  lifter: { said: 'the lifter', source: 'race shop’s note on lash: one valve that keeps loosening' },
  lobe: { said: 'the lobe', source: 'race shop’s note on lash: one valve that keeps loosening' },
  spring: { said: 'the spring at high speed', source: COMMON },
  touching: {
    said: 'coils that touch, or a valve that meets its piston',
    source: 'parts store’s pushrod guide: what bends pushrods',
  },
  oil: { said: 'the oil at the valve train', source: COMMON },
  setting: { said: 'how all were set', source: COMMON },
  seat: { said: 'valve and seat', source: COMMON },
} as const satisfies Readonly<Record<string, Cause>>;

export type CauseName = keyof typeof CAUSES;

const isCause = (text: string): text is CauseName => Object.hasOwn(CAUSES, text);

/** In the order in which a desk looks. */
export const CAUSE_NAMES: readonly CauseName[] = Object.keys(CAUSES).filter(isCause);

/** Causes that are told apart from the others together. */
export const LOCKING = ['nut-lock', 'stud-top', 'stud-thread'] as const satisfies readonly CauseName[];
export const WEAR = [
  'pushrod',
  'tip',
  'roller',
  'trunnion',
  'lifter',
  'lobe',
] as const satisfies readonly CauseName[];
export const OF_ONE = [...LOCKING, 'stud', ...WEAR] as const satisfies readonly CauseName[];
export const OF_ALL = ['oil', 'setting'] as const satisfies readonly CauseName[];
