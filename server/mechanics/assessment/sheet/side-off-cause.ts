import { lashMakesIt } from '../common/lash-makes-it.ts';
import { inches, listed } from '../common/said.ts';
import type { Evidence } from '../evidence.ts';
import type { Level } from './side-level.ts';

/** A side that is off, with what it is over and what it is held to be. */
export type Off = Level & Required<Pick<Level, 'ratio' | 'claim'>>;

export const hasBoth = (level: Level): level is Off => level.ratio !== undefined && level.claim !== undefined;

/** The lash of the card, left in, would make it [m]. */
function lashOf(
  { card }: Evidence,
  { side, ratio, claim, lifts, hydraulic, lash: said, lashOut }: Off,
): number | undefined {
  const { lash } = card[side];
  if (lash === undefined || lash <= 0 || hydraulic || said === 'zero') return undefined;
  if (lashOut && said === undefined) return undefined;
  const short = lifts * (claim.ratio / ratio.value - 1);
  return lashMakesIt(short, lash) ? lash : undefined;
}

/** What fits all of them alike: the lash, where the card has one that makes it; else a lifter that sinks, if one may. */
export function fitting(evidence: Evidence, sides: readonly Off[]): 'spring' | 'lash' | 'lifter' | undefined {
  // A loaded ratio carries what the spring takes off: what is left is told on a light one.
  if (sides.some(({ spring }) => spring === 'running')) return 'spring';
  if (sides.every((each) => lashOf(evidence, each) !== undefined)) return 'lash';
  return sides.every(({ sinks, ratio, claim }) => sinks && ratio.value < claim.ratio) ? 'lifter' : undefined;
}

const ONE_AGAIN = 'read one of them again, small hand first';

/** What is looked at where nothing fits: the lash only while nobody said that it was out. */
export const unfitting = (sides: readonly Off[]): 'dial' | 'dial-alone' =>
  sides.every(({ lash, lashOut }) => lash === 'zero' || lashOut) ? 'dial-alone' : 'dial';

/** What settles it, the likeliest first. */
export const TEST = {
  spring: 'put a light spring on one of them, take its lash up to zero, and read it again, small hand first',
  lash: 'take the lash of one of them up to zero and read it again; then look at the dial’s travel in a turn, and the unit',
  lifter: 'put a solid or locked lifter under one of them and read it again, at zero lash, small hand first',
  dial: `look at the dial’s travel in a turn, the unit and the lash, and ${ONE_AGAIN}`,
  'dial-alone': `look at the dial’s travel in a turn and the unit, and ${ONE_AGAIN}`,
} as const;

const DIAL = 'Was the dial, the unit or the lash wrong alike for all of them?';

export const ASK = {
  spring: DIAL,
  lash: DIAL,
  lifter: 'Did the lifters sink, or was the dial or the unit wrong alike for all of them?',
  dial: DIAL,
  'dial-alone': 'Was the dial or the unit wrong alike for all of them?',
} as const;

export const FIRST = {
  spring: 'First: one of them on a light spring, at zero lash; then dial and unit; then the set.',
  lash: 'First: one of them again at zero lash; then dial and unit; then the set.',
  lifter: 'First: one of them again on a solid or locked lifter; then dial, unit and lash; then the set.',
  dial: 'First: dial, unit and lash; then the set.',
  'dial-alone': 'First: dial and unit; then the set.',
} as const;

export function lashSaid(evidence: Evidence, sides: readonly Off[]): string {
  const lashes = [...new Set(sides.flatMap((each) => lashOf(evidence, each) ?? []).map(inches))];
  return lashes.length === 1
    ? `The card’s lash of ${lashes[0]}, left in, would make it.`
    : `The card’s lash, ${listed(lashes)}, left in, would make it.`;
}
