/**
 * Whether the peaks of passes fall each time: a hydraulic lifter sinking, so that their mean is no reading.
 *
 * @param readings [m] peaks in the order of the passes
 * @returns true with three or more that each stand below the one before
 *
 * Source: common practice, no published source.
 */
export const isSinking = (readings: readonly number[]): boolean =>
  readings.length >= 3 && readings.slice(1).every((reading, index) => reading < (readings[index] ?? reading));
