import { impossible } from '../../../shared/problems/faults.ts';
import { everyFault } from '../kit/every-fault.ts';
import { type LinkageState, linkageAt, type PushrodLinkage, valveLiftAt } from './pushrod-linkage.ts';

/** Even steps of rotation that are looked at; a dead point between two of them shows as a turn of the drive. */
const CHECKED = 240;
const QUARTER = Math.PI / 2;
/** Nearer the end of the arm's way than this the lift hardly changes with the turn. */
const STEEP = 0.01;

/**
 * The turn of the rocker that gives a valve lift.
 *
 * Equation: sin(φ₀ − ρ) = sinφ₀ − h/b
 *
 * @param linkage [1] with its arm b [m] and closed angle φ₀ [rad]
 * @param netLift [m] valve lift h
 * @returns [rad] ρ, positive
 * @throws impossible-input when the lift is over twice the arm, or the arm comes to the end of its way before it
 *
 * Validity: rigid arm, pivot standing still.
 * Source: derived here.
 */
function rotationFor(parts: PushrodLinkage, netLift: number): number {
  const { pivotToTip, tipAngleClosed } = parts;
  if (netLift > 2 * pivotToTip) impossible(['netLift', 'pivotToTip'], 'the lift is more than twice the arm');
  if (Math.abs(tipAngleClosed) >= QUARTER) {
    impossible(['tipAngleClosed'], 'must be within 90° of square to the valve: the arm could not open it');
  }
  const sine = Math.sin(tipAngleClosed) - netLift / pivotToTip;
  if (sine <= -1) {
    impossible(['netLift', 'tipAngleClosed'], 'the arm comes to the end of its way before this lift');
  }
  const rough = tipAngleClosed - Math.asin(sine);
  const slope = pivotToTip * Math.cos(tipAngleClosed - rough);
  // The difference of two near angles loses figures for a small lift; one step of Newton's gives them back.
  return slope < STEEP * pivotToTip ? rough : rough + (netLift - valveLiftAt(parts, rough)) / slope;
}

function requireAssembly({ pushrodAngle, lifterBoreAngle }: PushrodLinkage): void {
  if (Math.cos(pushrodAngle - lifterBoreAngle) > 1e-9) return;
  impossible(
    ['pushrodAngle', 'lifterBoreAngle'],
    'the pushrod must stand within 90° of the lifter’s bore to be pushed by it',
  );
}

/**
 * Drives a linkage from closed to a net valve lift, holding it to what can be put together and pushed.
 *
 * Equation: see `linkageAt`; the lifter must rise at every step of the rotation
 *
 * @param linkage [1] lengths [m] and angles [rad]
 * @param netLift [m] valve lift, above zero
 * @param stations [1] even steps of rotation to answer
 * @returns the states at the stations, closed to open
 * @throws impossible-input when the lift is out of the arm's reach
 * @throws impossible-input when the pushrod can't stand on its lifter or be pushed by it
 * @throws impossible-input when the pushrod is too short to reach the bore's line on the way
 * @throws impossible-input when a rising lifter would not open the valve all the way
 *
 * Validity: rigid parts in one plane.
 * Source: derived here.
 */
export function driveLinkage(linkage: PushrodLinkage, netLift: number, stations: number): LinkageState[] {
  everyFault(
    () => rotationFor(linkage, netLift),
    () => requireAssembly(linkage),
  );
  const full = rotationFor(linkage, netLift);
  const at = (rotation: number): LinkageState => {
    const state = linkageAt(linkage, rotation);
    if (state === undefined) {
      return impossible(
        ['pushrodLength', 'pivotToCup'],
        'the pushrod is too short to reach the lifter’s bore all the way',
      );
    }
    if (state.liftRate <= 0) {
      return impossible(
        ['armAngle', 'pushrodAngle', 'lifterBoreAngle'],
        'a rising lifter would not turn the rocker so as to open the valve all the way',
      );
    }
    return state;
  };
  for (let step = 0; step <= CHECKED; step += 1) at((full * step) / CHECKED);
  return Array.from({ length: stations + 1 }, (_, step) => at((full * step) / stations));
}
