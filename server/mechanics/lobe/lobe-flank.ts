import { impossible } from '../../../shared/problems/faults.ts';
import type { LobeCard } from './card-fields.ts';
import { byRisingLift, checkCard } from './check-card.ts';
import { monotoneCubic } from './monotone-cubic.ts';
import { inverse4567, rise4567, slope4567 } from './polynomial-4567.ts';

/** One flank of a symmetric lobe, told by the crank angle from the nose. */
interface LobeFlank {
  /** Half the crank angle from seat to seat. */
  readonly halfSeat: number;
  readonly law: string;
  /** Largest lift error at the durations given. */
  readonly fitError: number;
  liftAt(fromNose: number): number;
  /** Change of lift per radian away from the nose: zero or negative. */
  slopeAt(fromNose: number): number;
}

const HALF_CYCLE = 2 * Math.PI;

function lawOf(count: number, seatGiven: boolean): string {
  const seat = seatGiven ? 'seat duration as given' : 'seat duration fitted through the lowest lift given';
  if (count === 1) return `4-5-6-7 polynomial on each flank, ${seat}`;
  return `4-5-6-7 polynomial on each flank, its phase a monotone cubic through the ${count} durations given, ${seat}`;
}

/**
 * A lobe's flank through the points of its card.
 *
 * Equation: lift = lobeLift·s(u(x)), s the 4-5-6-7 polynomial, x the crank angle from the nose; u is the monotone cubic
 * through (0, 1), each (duration/2, s⁻¹(atLift/lobeLift)) and (X, 0), X the given half seat duration, else
 * x/(1 − u) of the lowest lift given
 *
 * @param card [1] lengths [m], angles in crank [rad]
 * @param prefix [1] JSON pointer of the card, for a fault
 * @returns the flank, with a continuous slope that is zero at the nose and at the seat
 * @throws impossible-input as `checkCard`
 * @throws impossible-input when the seat duration that the lowest point asks for is over 720°
 *
 * Validity: symmetric lobes; between the card's points the lift is this law's, not the maker's.
 * Source: derived here; s from R. L. Norton, Cam Design and Manufacturing Handbook (2002); monotone cubic of Fritsch and
 * Butland (1984).
 */
export function lobeFlank(card: LobeCard, prefix = ''): LobeFlank {
  checkCard(card, prefix);
  const points = byRisingLift(card).map(({ atLift, duration, index }) => {
    return { x: duration / 2, y: inverse4567(atLift / card.lobeLift), index };
  });
  const [lowest] = points;
  const halfSeat = lowest === undefined ? 0 : lowest.x / (1 - lowest.y);
  if (halfSeat > HALF_CYCLE * (1 + 1e-12)) {
    impossible(
      [`${prefix}/durations/${lowest?.index ?? 0}/duration`],
      'is so long at this lift that the lobe would never come down to its base circle within 720°',
    );
  }
  // A lift too small to stand apart from the seat is the seat.
  const seatGiven = lowest !== undefined && halfSeat <= lowest.x;
  const onFlank = seatGiven ? points.slice(1) : points;
  const phase = monotoneCubic([{ x: 0, y: 1 }, ...onFlank.toReversed(), { x: halfSeat, y: 0 }]);
  const liftAt = (x: number): number => (x < halfSeat ? card.lobeLift * rise4567(phase.at(x)) : 0);
  return {
    halfSeat,
    law: lawOf(card.durations.length, seatGiven),
    fitError: Math.max(...card.durations.map((each) => Math.abs(liftAt(each.duration / 2) - each.atLift))),
    liftAt,
    slopeAt: (x) => (x < halfSeat ? card.lobeLift * slope4567(phase.at(x)) * phase.slopeAt(x) : 0),
  };
}
