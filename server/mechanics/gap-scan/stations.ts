import { type InputFault, InputFaults } from '../../../shared/problems/faults.ts';
import { DEG } from '../kit/si.ts';

/** A gap as it was read, in SI. */
interface GapReading {
  readonly crankAngle: number;
  readonly gap: number;
}

/** The gap at one crank angle, and which reading it is. */
export interface Station extends GapReading {
  readonly index: number;
  /** The highest gap that was read at the same crank angle. */
  readonly highest: number;
}

/** No wheel tells crank angles apart that are nearer than this. */
const SAME_ANGLE = 1e-6 * DEG;

/** A parabola needs this many crank angles. */
const FEWEST = 3;

/** Two readings of one crank angle: the lower one stands, of equals the one that came first. */
function together(one: Station, other: Station): Station {
  const lower = other.gap < one.gap ? other : one;
  return { ...lower, crankAngle: one.crankAngle, highest: Math.max(one.highest, other.highest) };
}

/**
 * Puts the readings of a scan in the order of the crank, one to a crank angle.
 *
 * @param readings [rad, m] in any order
 * @returns the stations in rising crank angle; where an angle was read more than once the least of its gaps
 * @throws impossible-input when there are fewer than three different crank angles, at each angle that stands again
 *
 * Validity: angles within a millionth of a degree are one; 350° and −10° are two.
 */
export function stationsOf(readings: readonly GapReading[]): Station[] {
  const ordered = readings
    .map((each, index): Station => ({ ...each, index, highest: each.gap }))
    .toSorted((a, b) => a.crankAngle - b.crankAngle || a.index - b.index);
  const stations: Station[] = [];
  const again: InputFault[] = [];
  for (const reading of ordered) {
    const last = stations.at(-1);
    if (last === undefined || reading.crankAngle - last.crankAngle > SAME_ANGLE) {
      stations.push(reading);
      continue;
    }
    stations[stations.length - 1] = together(last, reading);
    again.push({
      pointer: `/readings/${reading.index}/crankAngle`,
      code: 'impossible-input',
      detail: 'is the crank angle of another reading again: a scan needs three different ones',
    });
  }
  if (stations.length < FEWEST) throw new InputFaults(again.slice(0, 100));
  return stations;
}
