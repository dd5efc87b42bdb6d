import type { TableData } from '../../parts/table.examples.ts';

/** The pieces that the pages of the reference are made of, beside the parts that every page may use. */
export interface ReferencePieces {
  /** A list of an answer; one of many rows is folded away. */
  readonly '/pages/reference/list': TableData;
}
