import { formatNumber } from '../../../../shared/quantities/format.ts';
import { spokenUnits } from '../../../../shared/quantities/spoken-units.ts';
import type { UnitSystem } from '../../../../shared/quantities/units.ts';
import type { Action } from '../../explain-readings/types.ts';
import type { ExplanationResult } from './explanation.ts';

/** A wide interval carries no third place. */
const WIDE = 0.0995;

/** `1.655`: three places as the trade writes a ratio, two where the interval is too wide to carry them. */
export function ratioWithin(ratio: number, halfWidth: number): string {
  return formatNumber(Number(ratio.toPrecision(12)), halfWidth >= WIDE ? 2 : 3);
}

/** `1.655, between 1.602 and 1.666` */
export function intervalSaid({ ratio: { median, interval95 } }: ExplanationResult): string {
  const [low, high] = interval95;
  const half = (high - low) / 2;
  return `${ratioWithin(median, half)}, between ${ratioWithin(low, half)} and ${ratioWithin(high, half)}`;
}

/** A reading that the inference weighs, or the same lift with a finer tool than it was read with. */
export type Telling = Action | 'dial-indicator';

const PART_WAY = 'valve-lift-at-.200';

/** Each next reading as the sentence that asks for it, where no figure is in it. */
const ASK: Readonly<Record<Exclude<Telling, typeof PART_WAY>, string>> = {
  'dial-indicator': 'Read the valve lift with a dial indicator, three passes, small hand first.',
  'read-back': 'Read the entries back: which valve is it, and is it lobe lift or valve lift?',
  'one-more-pass': 'Take one more pass, small hand first, and say which way the hand ran.',
  'lash-to-zero': 'Take the lash up to zero and read again.',
  'align-plunger': 'Set the plunger parallel to the stem, seen from front and side, and read again.',
  'lobe-at-lifter': 'Read the lobe lift at the lifter body.',
  'light-spring-solid-lifter':
    'Fit a light checking spring and a solid lifter, set the dial up again, and read.',
  'rocker-on-another-valve':
    'Swap test: move this rocker to another valve and read it there, then another one on this valve.',
};

/** Half way up and a little: a round figure of whichever dial is on the lifter. */
const STATION: Readonly<Record<UnitSystem, string>> = { inch: '.200 in', metric: '5 mm' };

/** The lobe lift that is turned to, as it is said and as it is entered. */
export const stationSaid = (): string => STATION[spokenUnits()];

/** A next reading as the sentence that asks for it. */
export const askFor = (action: Telling): string =>
  action === PART_WAY
    ? `Turn to ${stationSaid()} of lobe lift by a second dial at the lifter, and read the valve there.`
    : ASK[action];

/** Said in place of a reading that would take turning the engine under a stop. */
export const NOT_NOW = 'No reading is taken while the stop stands.';

/** How far a ratio is from a name, in whole per cent. */
export const percentAway = (ratio: number, name: number): number =>
  Math.round(Math.abs(ratio / name - 1) * 100);

/** `3 % over`; `level with` within half a per cent. */
export function awaySaid(ratio: number, name: number): string {
  const percent = percentAway(ratio, name);
  return percent === 0 ? 'level with' : `${percent} % ${ratio > name ? 'over' : 'under'}`;
}
