import type { EngineTold, Entry } from './play.ts';

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

export const told = (ask: string, answer: string, more: Partial<Entry> = {}): Entry => ({
  ask: `noise-${ask}`,
  answer,
  ...more,
});
export const six = told('which', 'one', { cylinder: 6, valve: 'intake' });
export const nothingBroken = told('signs', 'none');
export const unknown = (...asks: string[]): Entry[] => asks.map((ask) => told(ask, 'not-known'));

export const PHONE = ['oil', 'heat', 'hours', 'speed', 'history', 'set-screw', 'nut-used', 'stud'];

export const line = (
  cylinder: number,
  inches: string,
  moment: 'set' | 'found',
  readOn: string,
  nut: string,
): Entry => ({
  lash: { cylinder, valve: 'intake', lash: `${inches} in`, moment, engine: 'cold', nut, readOn },
});
/** .018 to .026: .008 where .004 is ordinary. */
export const grew = (cylinder: number, nut: string): Entry[] => [
  line(cylinder, '.018', 'set', '2026-02-01', 'not-looked'),
  line(cylinder, '.026', 'found', '2026-02-20', nut),
];

export const LOCKING = ['nut-lock', 'stud-top', 'stud-thread'];
export const WEAR = ['pushrod', 'tip', 'roller', 'trunnion', 'lifter', 'lobe'];
