import { impossible } from '../../../shared/problems/faults.ts';
import { EQUAL } from '../kit/nearest.ts';

/**
 * The height of a spring with the valve at full lift.
 *
 * Equation: openHeight = installedHeight − netLift
 *
 * @param installedHeight [m] height with the valve on its seat, above zero
 * @param netLift [m] lift of the valve off its seat, above zero
 * @returns [m] the open height, above zero
 * @throws impossible-input when the lift takes up the whole installed height
 *
 * Validity: the retainer moves with the valve.
 * Source: definition, common practice, no published source.
 */
export function openHeightOf(installedHeight: number, netLift: number): number {
  const openHeight = installedHeight - netLift;
  if (openHeight <= 0) {
    impossible(['installedHeight', 'netLift'], 'the lift takes up the whole installed height of the spring');
  }
  return openHeight;
}

/** Refuses a spring whose coils are solid before it is even installed. */
export function refuseSolidAbove(
  solidHeight: number,
  installedHeight: number,
  fields: readonly [solid: string, installed: string],
): void {
  if (solidHeight > installedHeight) {
    impossible(fields, 'the solid height is above the installed height: the spring would not go in');
  }
}

/** Coils that meet at full lift, to the billionth of an inch, have no room either: that is coil bind. */
export const coilsMeet = (margin: number): boolean => margin <= EQUAL;
