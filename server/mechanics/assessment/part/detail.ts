/** Filled in with its computation. */
export type PartDetail = object;
