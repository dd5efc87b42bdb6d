import { allowance } from '../kit/allowances.ts';
import { inches } from '../kit/say-inches.ts';
import { DEG } from '../kit/si.ts';
import type { StandsApart } from './apart.ts';
import type { ScanLeast } from './least.ts';
import type { Station } from './stations.ts';

/** A scan whose neighbours are so uneven that an error in one reading counts this many times is read again. */
const UNEVEN = 1.5;

/** `10° before TDC`; an angle as it was given, to a hundredth. */
export function crankSaid(crankAngle: number): string {
  const degrees = Number((crankAngle / DEG).toFixed(2));
  if (degrees === 0) return 'TDC';
  return `${Math.abs(degrees)}° ${degrees < 0 ? 'before' : 'after'} TDC`;
}

/** `at about 9° after TDC`: a place that was calculated, to the degree that a wheel is read to. */
export function nearSaid(crankAngle: number): string {
  const degrees = Math.round(crankAngle / DEG);
  return degrees === 0 ? 'at about TDC' : `at about ${crankSaid(degrees * DEG)}`;
}

/** `reads .020 in over the curve through its neighbours` */
export const apartSaid = ({ off }: StandsApart): string =>
  `reads ${inches(Math.abs(off))} ${off > 0 ? 'over' : 'under'} the curve through its neighbours`;

const goOn = (edge: 'first' | 'last', { crankAngle }: Station): string =>
  `Read on at ${edge === 'first' ? 'earlier' : 'later'} crank angles than ${crankSaid(crankAngle)}, in steps of 2°, until the gap has risen twice.`;

/** Nobody is asked to turn an engine through a contact for one more reading. */
const TOUCH = 'Valve and piston touch: turn no further, and find out why before anything else is read.';

function atEdge(scan: Extract<ScanLeast, { bothEnds: boolean }>, stations: readonly Station[]): string {
  const end = scan.edge === 'first' ? stations[0] : stations.at(-1);
  const one = goOn(scan.edge, end ?? scan.reading);
  const last = stations.at(-1);
  return scan.bothEnds && last !== undefined ? `${one} ${goOn('last', last)}` : one;
}

function asked(scan: ScanLeast, stations: readonly Station[]): string | undefined {
  if (scan.edge !== 'none') return atEdge(scan, stations);
  const { before, after, reading, spread, apart } = scan;
  if (apart !== undefined)
    return `The gap at ${crankSaid(apart.station.crankAngle)} ${apartSaid(apart)}. Read that angle again, and put right or leave out what was wrong.`;
  const widest = Math.max(reading.crankAngle - before.crankAngle, after.crankAngle - reading.crankAngle);
  const where = `between ${crankSaid(before.crankAngle)} and ${crankSaid(after.crankAngle)}`;
  // A step of exactly the allowance passes, whatever its conversion to radians left over.
  if (widest > allowance('scan-step') * (1 + 1e-9)) {
    return `The steps beside the least gap are wide: read every 2° ${where}.`;
  }
  if (spread > UNEVEN) {
    const times = spread < 100 ? `${spread.toFixed(1)} times` : 'over a hundred times';
    return `The steps beside the least gap are uneven, and an error in one reading counts ${times}: read in even steps of 2° ${where}.`;
  }
  return undefined;
}

/** What to read next, where the scan does not settle the least gap; undefined where it does. */
export function scanAsk(scan: ScanLeast, stations: readonly Station[]): string | undefined {
  const ask = asked(scan, stations);
  return ask !== undefined && scan.least <= 0 ? TOUCH : ask;
}
