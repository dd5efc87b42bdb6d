import { withinHalfCycle } from '../cam/wrap.ts';
import { type LobeCard, peakOf } from './card-fields.ts';
import { lobeFlank } from './lobe-flank.ts';
import { monotoneCubic } from './monotone-cubic.ts';

/** Lift at the lobe against crank angle after top dead centre, over the stretch that is known. */
export interface LiftCurve {
  readonly from: number;
  readonly to: number;
  /** Whether the lobe is on its base circle before `from`, and after `to`. */
  readonly closedBefore: boolean;
  readonly closedAfter: boolean;
  readonly highest: number;
  /** How the lift runs between what was given. */
  readonly law: string;
  liftAt(crankAngle: number): number;
  slopeAt(crankAngle: number): number;
}

export interface LiftReading {
  readonly crankAngle: number;
  readonly lift: number;
}

/** A reading's own angle must count as within the readings after a shift and back. */
const EDGE = 1e-9;

/**
 * The lift curve of a lobe from its card.
 *
 * @param card [1] lengths [m], angles in crank [rad]
 * @param side [1] which lobe
 * @param advance [rad] crank, positive earlier
 * @param prefix [1] JSON pointer of the card, for a fault
 * @throws impossible-input as `lobeFlank`
 */
export function curveOfCard(
  card: LobeCard,
  side: 'intake' | 'exhaust',
  advance: number,
  prefix: string,
): LiftCurve {
  const flank = lobeFlank(card, prefix);
  const peak = withinHalfCycle(peakOf(card, side) - advance);
  return {
    from: peak - flank.halfSeat,
    to: peak + flank.halfSeat,
    closedBefore: true,
    closedAfter: true,
    highest: card.lobeLift,
    law: flank.law,
    liftAt: (angle) => flank.liftAt(Math.abs(angle - peak)),
    slopeAt: (angle) => Math.sign(angle - peak) * flank.slopeAt(Math.abs(angle - peak)),
  };
}

/**
 * The lift curve through a builder's own readings, monotone between them.
 *
 * @param readings [1] two or more, angles [rad] rising and within 720°, lifts at the lobe [m] not negative
 * @param advance [rad] crank, positive earlier than when they were taken
 */
export function curveOfReadings(readings: readonly LiftReading[], advance: number): LiftCurve {
  const [first, last] = [readings[0], readings.at(-1)];
  const [start, end] = [first?.crankAngle ?? 0, last?.crankAngle ?? 0];
  const middle = (start + end) / 2;
  // The same readings a whole cycle on are the same readings: bring them to the top dead centre counted from.
  const shift = withinHalfCycle(middle - advance) - middle;
  const curve = monotoneCubic(readings.map((each) => ({ x: each.crankAngle, y: each.lift })));
  const outside = (angle: number): boolean => angle < start - EDGE || angle > end + EDGE;
  return {
    from: start + shift,
    to: end + shift,
    closedBefore: first?.lift === 0,
    closedAfter: last?.lift === 0,
    highest: readings.reduce((most, each) => Math.max(most, each.lift), 0),
    law: 'a monotone cubic through the readings, each flank by itself',
    liftAt: (angle) => (outside(angle - shift) ? 0 : curve.at(angle - shift)),
    slopeAt: (angle) => (outside(angle - shift) ? 0 : curve.slopeAt(angle - shift)),
  };
}
