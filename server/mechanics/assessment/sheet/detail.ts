import type { SwapOutcome } from '../../valve-sheet/swap-test.ts';
import type { OddValve, SideJudged } from '../../valve-sheet/types.ts';
import type { SheetKindName, Side, Spring, ValvePlace } from '../evidence.ts';
import type { GapWord } from '../words.ts';

/** One figure of a valve's row: a mean of passes that go together, or the bounds that are left. SI. */
export interface SheetCellDetail {
  readonly kind: SheetKindName;
  readonly title: string;
  /** Of a valve lift only: on another spring it is another quantity. */
  readonly spring?: Spring;
  readonly value?: number;
  readonly low?: number;
  readonly high?: number;
  readonly passes: number;
  readonly spread?: number;
  /** Passes that stand apart from their fellows and are not in the figure. */
  readonly apart: readonly { readonly entryId: string; readonly off: number; readonly turns: number }[];
  readonly lacks: readonly string[];
  readonly word?: GapWord;
  readonly judgementId?: string;
  readonly entryIds: readonly string[];
}

export interface SheetRowDetail extends ValvePlace {
  readonly armId?: string;
  readonly armName?: string;
  readonly cells: readonly SheetCellDetail[];
  readonly questionIds: readonly string[];
  /** A strong question on it is open: it is not set against its siblings, and no swap is advised. */
  readonly inDoubt: boolean;
}

export interface SheetRatioDetail extends ValvePlace {
  readonly spring: Spring;
  readonly name: string;
  readonly value?: number;
  readonly low?: number;
  readonly high?: number;
  readonly lobeFrom: 'read' | 'card';
  readonly quantityId: string;
}

export interface SheetOddDetail extends OddValve {
  readonly judgementId: string;
  /** The swap that would decide part against position, or what has to be known before it. */
  readonly swap?: string;
}

export interface SheetSideDetail extends Omit<SideJudged, 'odd'> {
  readonly spring: Spring;
  readonly odd: readonly SheetOddDetail[];
}

export interface SheetSwapDetail extends SwapOutcome {
  readonly side: Side;
  readonly spring: Spring;
  readonly armNames: readonly [string, string];
  readonly judgementId: string;
}

export interface SheetDetail {
  /** Cylinders in the orders that a sheet can be written in. */
  readonly orders: { readonly firing: readonly number[]; readonly bank: readonly number[] };
  /** Every cylinder in the engine's own numbering, intake and exhaust. */
  readonly rows: readonly SheetRowDetail[];
  readonly ratios: readonly SheetRatioDetail[];
  readonly sides: readonly SheetSideDetail[];
  readonly swaps: readonly SheetSwapDetail[];
}
