/** Filled in with its computation. */
export type SetUpDetail = object;
