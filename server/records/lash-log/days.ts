/** The westernmost clocks are so far behind universal time: where a shop is nobody has said. */
const WESTERNMOST_MS = 12 * 3_600_000;

/**
 * Whether a day was over at a moment, by every clock on earth: at eight in the evening of the 13th, eight hours west of
 * Greenwich, universal time has the 14th, and it is still the day that was said.
 *
 * @param day `2026-03-13`
 */
export const isOverEverywhere = (day: string, at: Date): boolean =>
  day < new Date(at.getTime() - WESTERNMOST_MS).toISOString().slice(0, 10);
