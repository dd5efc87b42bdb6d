import { type InputFault, InputFaults } from '../../../shared/problems/faults.ts';
import type { LiftReading } from './lift-curve.ts';

const CYCLE = 4 * Math.PI;

/**
 * Puts a builder's lift readings in the order of the crank and holds them to one cycle.
 *
 * @param readings [1] angles [rad], lifts [m], in any order
 * @param prefix [1] JSON pointer of the list
 * @returns the readings in rising crank angle
 * @throws impossible-input when a crank angle stands twice
 * @throws impossible-input when the readings reach over more than 720°
 */
export function orderedReadings(readings: readonly LiftReading[], prefix: string): LiftReading[] {
  const ordered = readings
    .map((each, index) => ({ ...each, index }))
    .toSorted((a, b) => a.crankAngle - b.crankAngle);
  const faults = ordered.slice(1).flatMap((next, place): InputFault[] => {
    const previous = ordered[place] ?? next;
    if (next.crankAngle > previous.crankAngle) return [];
    const detail = `is the crank angle of item ${previous.index} again`;
    return [{ pointer: `${prefix}/${next.index}/crankAngle`, code: 'impossible-input', detail }];
  });
  const [first, last] = [ordered[0], ordered.at(-1)];
  if (first !== undefined && last !== undefined && last.crankAngle - first.crankAngle > CYCLE * (1 + 1e-12)) {
    const detail = `is more than the cycle of 720° from item ${first.index}`;
    faults.push({ pointer: `${prefix}/${last.index}/crankAngle`, code: 'impossible-input', detail });
  }
  if (faults.length > 0) throw new InputFaults(faults.slice(0, 100));
  return ordered;
}
