import { DEG, IN } from '../kit/si.ts';
import { leastSquares } from '../statistics/least-squares.ts';
import { FIT_WITHIN } from './smooth.ts';
import type { Station } from './stations.ts';

/** A reading so many half-widths of its interval off the curve of the others is no scatter. */
const NO_SCATTER = 1.5;

/** A gap is a parabola there to a few tenths of a thousandth, and so much of a distance is the curve's own. */
const OF_CURVE = 0.0005 * IN;

/** Where steps are wide, the nearest five, as far as this. */
const WIDE = 15 * DEG;

/** Three make a parabola, one more says how well it fits, and one is held to it: with fewer all fit alike badly. */
const FEWEST = 5;

/** The reading that lies farthest from the curve of its neighbours, where that is no scatter. */
export interface StandsApart {
  readonly station: Station;
  /** How far it reads over the curve through the others near the least, below zero where it reads under it [m]. */
  readonly off: number;
}

interface Held extends StandsApart {
  /** The same over what a reading and that curve scatter together, against one reading alone [m]. */
  readonly byScatter: number;
}

/** One reading against the parabola by least squares through the others. */
function heldTo(others: readonly Station[], station: Station, middle: number): Held[] {
  const scaled = ({ crankAngle }: Station) => (crankAngle - middle) / FIT_WITHIN;
  const at = others.map(scaled);
  const fit = leastSquares(
    [at.map(() => 1), at, at.map((x) => x * x)],
    others.map(({ gap }) => gap),
  );
  if (fit === undefined) return [];
  const x = scaled(station);
  const row = [1, x, x * x];
  const along = (list: readonly number[]) =>
    list.reduce((sum, each, index) => sum + each * (row[index] ?? 0), 0);
  const off = station.gap - along(fit.estimates);
  return [{ station, off, byScatter: Math.abs(off) / Math.sqrt(1 + along(fit.covariance.map(along))) }];
}

/** In order of the crank. */
function nearTo(stations: readonly Station[], middle: number): Station[] {
  const away = ({ crankAngle }: Station) => Math.abs(crankAngle - middle);
  const within = (reach: number) => stations.filter((each) => away(each) <= reach * (1 + 1e-9));
  const near = within(FIT_WITHIN);
  if (near.length >= FEWEST) return near;
  const five = within(WIDE)
    .toSorted((a, b) => away(a) - away(b))
    .slice(0, FEWEST);
  return five.toSorted((a, b) => a.crankAngle - b.crankAngle);
}

/**
 * The reading near the least of a scan that its neighbours do not bear out.
 *
 * Equation: each reading within 6° of the least, or of the nearest five where steps are wider, against P₋, the parabola by least squares through the others there:
 * r = (g − P₋(θ))/√(1 + xᵀ(XᵀX)⁻¹x), the deleted residual over what it and the curve scatter together; the largest
 * stands apart where |r| > 1.5·readingUncertainty and the distance itself is over .0005 in
 *
 * @param stations [rad, m] in rising crank angle
 * @param middle [rad] crank angle of the least
 * @param readingUncertainty [m] half-width of one reading's 95 % interval, above zero
 * @returns the station and off [m]; undefined where all bear each other out, or fewer than five lie near
 *
 * Validity: one reading apart; of two the farther one is named first. Of readings that scatter by the whole of their
 * uncertainty one in three hundred lies so far out by chance.
 * Source: deleted residuals: R. Cook, S. Weisberg, Residuals and Influence in Regression, 1982, 2.2 (from memory); the
 * bounds are calculated here.
 */
export function standsApart(
  stations: readonly Station[],
  middle: number,
  readingUncertainty: number,
): StandsApart | undefined {
  const near = nearTo(stations, middle);
  if (near.length < FEWEST) return undefined;
  const [worst] = near
    .flatMap((station) =>
      heldTo(
        near.filter((each) => each !== station),
        station,
        middle,
      ),
    )
    .toSorted((a, b) => b.byScatter - a.byScatter);
  if (worst === undefined || worst.byScatter <= NO_SCATTER * readingUncertainty) return undefined;
  return Math.abs(worst.off) <= OF_CURVE ? undefined : { station: worst.station, off: worst.off };
}
