import { CANDIDATES } from '../../threads/hole-fit.ts';

/** The size of stud that a hole of this size is nearest to; lengths in metres. */
const nearestTo = (size: number): string | undefined =>
  CANDIDATES.toSorted((a, b) => Math.abs(a.nominalHole - size) - Math.abs(b.nominalHole - size))[0]?.thread
    .size;

/** The sizes of stud that holes of these sizes are nearest to, each once; lengths in metres. */
export const sizesNear = (sizes: readonly number[]): string[] => [
  ...new Set(sizes.flatMap((size) => nearestTo(size) ?? [])),
];
