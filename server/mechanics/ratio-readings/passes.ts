/**
 * Whether the peaks of passes fall each time: at the valve a hydraulic lifter sinking, so that their mean is no reading.
 *
 * @param readings [m] peaks in the order of the passes
 * @param least [m] mean fall from pass to pass that says so; less lies within what a hand is read to
 * @returns true with three or more that each stand below the one before, and fall by as much
 *
 * Source: common practice, no published source.
 */
export function isSinking(readings: readonly number[], least: number): boolean {
  const [first = 0] = readings;
  const fall = (first - (readings.at(-1) ?? first)) / Math.max(1, readings.length - 1);
  return (
    readings.length >= 3 &&
    fall >= least - EQUAL &&
    readings.slice(1).every((reading, index) => reading < (readings[index] ?? reading))
  );
}

/** Last bits of the arithmetic [m]. */
const EQUAL = 1e-9;
