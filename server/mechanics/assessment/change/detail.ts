/** Filled in with its computation. */
export type ChangeDetail = object;
