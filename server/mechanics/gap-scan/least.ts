import { EQUAL } from '../kit/nearest.ts';
import { type StandsApart, standsApart } from './apart.ts';
import { dipOf } from './parabola.ts';
import { smoothedLeast } from './smooth.ts';
import type { Station } from './stations.ts';

/** The least gap of a scan between its readings. */
interface Between {
  readonly edge: 'none';
  readonly least: number;
  readonly crankAngle: number;
  readonly reading: Station;
  readonly before: Station;
  readonly after: Station;
  /** What an error of one in each reading does to the least, in quadrature. */
  readonly spread: number;
  /** How many times as wide its interval is because readings lie off the curve by more than they were said to. */
  readonly widened: number;
  /** The readings that the parabola goes through or between, in order of crank angle. */
  readonly fitted: readonly Station[];
  /** The gap rises by this times the square of the way from the least [m/rad²]. */
  readonly bend: number;
  /** A reading that its neighbours do not bear out; where it reads over them, with what the least is without it. */
  readonly apart?: Apart;
}

interface Apart extends StandsApart {
  readonly without?: Pick<Between, 'least' | 'spread' | 'widened'>;
}

/** A scan that reads its least gap at an end: the least itself may lie beyond it. */
interface AtEdge {
  readonly edge: 'first' | 'last';
  readonly least: number;
  readonly crankAngle: number;
  readonly reading: Station;
  /** Whether the other end reads as little. */
  readonly bothEnds: boolean;
}

export type ScanLeast = Between | AtEdge;

function between(before: Station, reading: Station, after: Station, lowest: number): Between {
  const rise = ({ gap }: Station) => Math.max(0, gap - reading.gap);
  const steps = [reading.crankAngle - before.crankAngle, after.crankAngle - reading.crankAngle] as const;
  const { below, shift, weights, bend } = dipOf([rise(before), rise(after)], steps);
  return {
    edge: 'none',
    least: Math.min(lowest, reading.gap - below),
    crankAngle: reading.crankAngle + shift,
    reading,
    before,
    after,
    spread: Math.hypot(...weights),
    widened: 1,
    fitted: [before, reading, after],
    bend,
  };
}

/**
 * Half-width of the 95 % interval of a least between readings.
 *
 * Equation: U = u·√(Σ l²), widened; with a reading over its neighbours as far as to the end of the interval without it
 *
 * @param scan the least [m] with its spread and how it is widened [1]
 * @param u [m] half-width of one reading's interval
 * @param spreadOf [1] what of a spread counts
 *
 * Validity: a reading under its neighbours is believed: then the least is it, and no wider.
 * Source: JCGM 100:2008, 5.1.2; whether the reading counts nobody knows yet, so that both answers are held.
 */
export function halfWidthOf(
  scan: Pick<Between, 'least' | 'spread' | 'widened' | 'apart'>,
  u: number,
  spreadOf = (of: number) => of,
): number {
  const half = u * spreadOf(scan.spread * scan.widened);
  const without = scan.apart?.without;
  return without === undefined
    ? half
    : Math.max(half, Math.abs(without.least - scan.least) + halfWidthOf(without, u, spreadOf));
}

/** The reading that stands apart, and the least without it where it reads over the others. */
function apartIn(stations: readonly Station[], { crankAngle }: Station, u: number): { apart?: Apart } {
  const apart = standsApart(stations, crankAngle, u);
  if (apart === undefined) return {};
  if (apart.off < 0) return { apart };
  const rest = foundIn(
    stations.filter((each) => each !== apart.station),
    u,
  );
  return {
    apart:
      rest.edge === 'none'
        ? { ...apart, without: { least: rest.least, spread: rest.spread, widened: rest.widened } }
        : apart,
  };
}

/**
 * The least gap of a scan.
 *
 * Equation: the least of the parabola through the least reading and its two neighbours; where readings scatter and more
 * of them are near, of the parabola by least squares through those; at an end the reading itself
 *
 * @param stations [rad, m] three or more in rising crank angle
 * @param readingUncertainty [m] half-width of one reading's 95 % interval; left out or zero, readings are exact
 * @returns least [m], its crankAngle [rad], the reading, and at which edge it is; between readings the neighbours,
 * spread [1], the readings fitted, bend [m/rad²] and which reading stands apart. Of equal readings the one whose
 * parabola reaches lowest, then the first
 *
 * Validity: an end that reads as little as the least reading is an edge: the gap has not been seen to rise there.
 * Source: derived here.
 */
export function leastOf(stations: readonly Station[], readingUncertainty = 0): ScanLeast {
  const found = foundIn(stations, readingUncertainty);
  return found.edge !== 'none' || readingUncertainty <= 0
    ? found
    : { ...found, ...apartIn(stations, found.reading, readingUncertainty) };
}

function foundIn(stations: readonly Station[], readingUncertainty: number): ScanLeast {
  const [first, last] = [stations[0], stations.at(-1)];
  if (first === undefined || last === undefined) throw new RangeError('a scan needs readings');
  const lowest = stations.reduce((least, { gap }) => Math.min(least, gap), Number.POSITIVE_INFINITY);
  const isLeast = ({ gap }: Station) => gap <= lowest + EQUAL;
  const [atFirst, atLast] = [isLeast(first), isLeast(last)];
  if (atFirst || atLast) {
    const reading = atFirst ? first : last;
    return {
      edge: atFirst ? 'first' : 'last',
      least: lowest,
      crankAngle: reading.crankAngle,
      reading,
      bothEnds: atFirst && atLast,
    };
  }
  const candidates = stations.flatMap((reading, place): Between[] => {
    const [before, after] = [stations[place - 1], stations[place + 1]];
    if (!isLeast(reading) || before === undefined || after === undefined) return [];
    return [between(before, reading, after, lowest)];
  });
  const through = candidates.reduce((best, each) => (each.least < best.least ? each : best));
  if (readingUncertainty <= 0) return through;
  return { ...through, ...smoothedLeast(stations, through.reading.crankAngle, readingUncertainty) };
}
