/** Filled in with its computation. */
export type SheetDetail = object;
