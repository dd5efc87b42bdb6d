/** A ratio agrees with what the arm is held to be within this (common practice, no published source). */
export const WITHIN = 0.02;
/** Up to here over is ordinary for arms made with room for flex; beyond it either way a reading is doubted first. */
export const ORDINARY = 0.045;

/** Where a light-spring ratio stands to what the arm is held to be (common practice, no published source). */
export type Band = 'far-under' | 'under' | 'within' | 'over' | 'far-over';

/** From the lowest; each ends where the next begins, as a share of what the arm is held to be. */
const BANDS: readonly (readonly [Band, number])[] = [
  ['far-under', -ORDINARY],
  ['under', -WITHIN],
  ['within', WITHIN],
  ['over', ORDINARY],
  ['far-over', Number.POSITIVE_INFINITY],
];

/** A thousandth of a ratio is the last figure that is told: an edge within half of it is not crossed. */
const TOLD_TO = 0.0005;

/** Every band that the interval of a reading lies in: one, or it straddles the edge between them. */
export function bandsOf(claim: number, low: number, high: number): Band[] {
  return BANDS.flatMap(([band, end], index) => {
    const start = BANDS[index - 1]?.[1] ?? Number.NEGATIVE_INFINITY;
    return high - TOLD_TO > claim * (1 + start) && low + TOLD_TO < claim * (1 + end) ? [band] : [];
  });
}
