import { deg, inches } from './quantities.ts';

/** A crank angle in degrees with the gap there, in inches. */
export type Pair = readonly [crankAngle: number, gap: number];

const readings = (pairs: readonly Pair[]) =>
  pairs.map(([at, gap]) => ({ crankAngle: deg(at), gap: inches(gap) }));

/** A body of readings, with more of its fields. */
export const scan = (pairs: readonly Pair[], more: object = {}) => ({ readings: readings(pairs), ...more });

/** The gap at a crank angle where it bends evenly about its least. */
export const parabola = (least: number, where: number, bend: number) => (at: number) =>
  least + bend * (at - where) ** 2;
