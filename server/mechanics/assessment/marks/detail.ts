/** Filled in with its computation. */
export type MarksDetail = object;
