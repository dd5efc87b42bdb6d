import type { ValveName } from '../../../../../shared/schemas/words.ts';
import type { SwapVerdict } from '../../../valve-sheet/swap-test.ts';
import type { OddCause, OddValve, SideJudged } from '../../../valve-sheet/types.ts';
import type { Lack } from '../../common/lack.ts';
import type { LotFigure } from '../../common/lot.ts';
import type { SheetKindName, Side, Spring, ValvePlace } from '../../evidence.ts';
import type { GapWord } from '../../words.ts';
import type { Partner } from './partner.ts';

/** One figure of a valve's row: a mean of passes that go together, or the bounds that are left. SI. */
export interface SheetCellDetail extends LotFigure {
  readonly kind: SheetKindName;
  readonly title: string;
  /** Of a valve lift only: on another spring it is another quantity. */
  readonly spring?: Spring;
  /** How far its tool may be off, as a 95 % half-width. */
  readonly half: number;
  /** Readings of it that were found wrong by an answer, and taken again since: in no figure. */
  readonly readAgain?: readonly string[];
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
  /** Read with arms of a set that is off since. */
  readonly soldAsThen?: number;
  readonly comesOff?: true;
  readonly name: string;
  readonly value?: number;
  readonly low?: number;
  readonly high?: number;
  readonly lobeFrom: 'read' | 'card';
  /** How the lash was, where that was said. */
  readonly lash?: 'zero' | 'set';
  readonly lobeLift?: number;
  /** What each of the two was read with was said; else its ± is that of any entry. */
  readonly toolSaid: boolean;
  readonly quantityId: string;
}

/** The same once it is known what it waits for before a word stands on it. */
export interface SheetRatioTold extends SheetRatioDetail {
  readonly lacks: readonly Lack[];
}

export interface SheetOddDetail extends Omit<OddValve, 'cause'> {
  /** As the figures have it; once a swap has told, the part or the position alone; another arm by its mark. */
  readonly cause: OddCause | 'part' | 'position' | 'mark';
  readonly judgementId: string;
  /** It is off on a lifter that may sink, its own or those of the others: that comes before its arm. */
  readonly sinks?: true;
  /** It is low by just its lash, and nobody said whether that was out: that comes before its arm too. */
  readonly lash?: true;
  /** It reads as its own arm is stamped, where the others are held to be another ratio. */
  readonly asMarked?: { readonly mark: number; readonly others: number };
  /** The arm that sits there. */
  readonly armName?: string;
  /** Passes of its own lift and lobe. */
  readonly passes: { readonly lift: number; readonly lobe: number };
  /** The swap that would decide part against position, or what has to be known before it. */
  readonly swap?: string;
  readonly toSwap?: { readonly partner: Partner; readonly arm?: string; readonly partnersArm?: string };
}

/** Valves of a side that are off alike, against the others of it. */
export interface SheetGroups {
  readonly own: readonly ValvePlace[];
  readonly others: readonly ValvePlace[];
  /** Middle lift of these less that of the others [m]. */
  readonly off: number;
  readonly banks: boolean;
}

export interface SheetSideDetail extends Omit<SideJudged, 'odd' | 'apart'> {
  readonly spring: Spring;
  /** The lifts read so far have no middle: which of them is off can’t be told. */
  readonly noMiddle?: { readonly apart: number; readonly places: readonly ValvePlace[] };
  /** They fall into two groups: each valve is set against its own. */
  readonly groups?: SheetGroups;
  readonly odd: readonly SheetOddDetail[];
}

/** A valve lift that nothing is worked out from, and why. */
export interface SheetHeld extends ValvePlace {
  readonly spring: Spring;
  readonly lack: string;
  /** What was wrong with it may have made it read high. */
  readonly mayBeLess?: true;
}

/** Two arms that sat on the same two valves, and what that decides. */
export interface SheetSwapDetail {
  readonly side: Side;
  readonly spring: Spring;
  readonly arms: readonly [string, string];
  readonly armNames: readonly [string, string];
  readonly places: readonly [string, string];
  readonly verdict: SwapVerdict;
  /**
   * Why it cannot be told: not all four were read one way, it is gone since, nothing differs by what counts, or what
   * stayed on a valve may be its lash.
   */
  readonly because?: 'not-read' | 'gone' | 'small' | 'lash';
  /** The valve that is the lower of the two, and whose lash is not known to have been out. */
  readonly lashAt?: ValvePlace;
  /** First arm less second, first valve less second, and the ± of the first [m]; where all four were read. */
  readonly part?: number;
  readonly position?: number;
  readonly half?: number;
  /** The arm and the valve that differ from their siblings, as far as these tell. */
  readonly oddArm?: string;
  readonly oddPlace?: string;
  readonly oddAt?: ValvePlace;
  /** Three of the four were read, and tell it: of the fourth nothing is known. */
  readonly ofThree?: true;
  /** What of it read unlike the valves that took no part, and by how much [m]. */
  readonly readOdd: readonly { readonly place: string; readonly arm: string; readonly off: number }[];
  /** All four did, and alike: the two are off by the same, which changing them with each other cannot part. */
  readonly alike?: true;
  /** Nothing of it did, and it tells nothing: two ordinary arms were changed over. */
  readonly ordinary?: true;
  /** Each of the two arms gives what it is stamped or sold as: they differ because their marks do. */
  readonly asMarked?: boolean;
  /** The odd arm's number was read: it leads to its lot. */
  readonly numberRead: boolean;
  /** Both lobes were read, and are taken out of the difference. */
  readonly lobesRead: boolean;
  /** Of a position: whether it went with the pushrod, and whether tip or stud differ in height, once that was seen. */
  readonly pushrod?: 'goes' | 'stays';
  readonly heights?: 'differs' | 'alike';
  /** The two as they sit now differ by what counts. */
  readonly showsNow: boolean;
  /** Of the four readings those that are not there, or not taken like the others. */
  readonly missing: readonly {
    readonly place: string;
    readonly arm: string;
    /** The arm sits there now. */
    readonly now: boolean;
    readonly otherWay: boolean;
    readonly apart: boolean;
    /** It was read, and the reading is in doubt. */
    readonly inDoubt?: true;
  }[];
  readonly judgementId: string;
  readonly restsOn: readonly string[];
}

export interface SheetDetail {
  /** The valves that each cylinder of the engine has. */
  readonly names: readonly ValveName[];
  /** Cylinders in the orders that a sheet can be written in. */
  readonly orders: { readonly firing: readonly number[]; readonly bank: readonly number[] };
  /** Every cylinder in the engine's own numbering, intake and exhaust. */
  readonly rows: readonly SheetRowDetail[];
  readonly ratios: readonly SheetRatioTold[];
  readonly sides: readonly SheetSideDetail[];
  readonly swaps: readonly SheetSwapDetail[];
  readonly held: readonly SheetHeld[];
}
