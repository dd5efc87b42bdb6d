/** A ratio is told to thousandths: two nearer than half of one are the same name. */
const SAME = 0.0005;

/** Whether two ratios that were stated are one and the same. */
export const sameRatio = (one: number, other: number): boolean => Math.abs(one - other) < SAME;
