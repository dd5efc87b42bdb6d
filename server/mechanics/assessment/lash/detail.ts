/** Filled in with its computation. */
export type LashDetail = object;
