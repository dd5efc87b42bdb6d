import type { PartKind } from '../../identify/kinds.ts';
import type { Offer, ReadingWord } from '../../identify/types.ts';
import type { FamilyEvidence } from './family.ts';

/** One reading set against one family; sizes in metres. */
export interface ReasonDetail {
  readonly kind: PartKind;
  /** `not-known`: the catalogue does not say. */
  readonly word: ReadingWord | 'not-known';
  readonly reading: number | string;
  readonly madeFor?: number | string;
  readonly difference?: number;
}

/** How likely something is, as a figure and as it is read out. */
export interface Chance {
  readonly probability: number;
  /** `46 %` */
  readonly share: string;
  /** `Possible` */
  readonly likely: string;
}

export interface CandidateDetail extends Chance {
  readonly family: FamilyEvidence;
  readonly reasons: readonly ReasonDetail[];
}

/** What more would tell of the part. */
export interface TellDetail {
  /** The measurement that settles most; left out where none would change the first name by much. */
  readonly kind?: PartKind;
  readonly sentence: string;
  /** What the catalogue has for the two that stand first, where it parts them; else empty. */
  readonly parted: string;
  /** Only a ratio measured on the engine tells more. */
  readonly byRatio: boolean;
}

/** The part set against the shop's catalogue. */
export interface RankingDetail {
  /** Families in the catalogue. */
  readonly families: number;
  /** Sizes and features that it rests on; marks play no part in it. */
  readonly counted: number;
  /** Likeliest first; of a long catalogue the first few alone. */
  readonly candidates: readonly CandidateDetail[];
  readonly noneOfThese: Chance;
  readonly offers: readonly Offer[];
  readonly tell: TellDetail;
}

/** What one reading of the hole says of the stud or bolt. */
export interface HoleDetail {
  readonly entryId: string;
  readonly readAs: string;
  /** The reading against the sizes that rockers are made for, with what of them. */
  readonly word: ReadingWord;
  readonly said: string;
  readonly threads: readonly { readonly designation: string; readonly fit: 'agrees' | 'cannot-tell' }[];
  readonly ask?: string;
  readonly cautions: readonly string[];
}

export interface CoverDetail {
  readonly entryId: string;
  readonly readAs: string;
  readonly word: 'clear' | 'close' | 'short';
  readonly reason: string;
  readonly settledBy: string;
  readonly judgementId: string;
}

/** What the part in the hand says of its family, of its fastener and of the room under the cover. */
export interface PartDetail {
  /** One answer for each reading of the hole: two directions are never one of their mean. */
  readonly holes: readonly HoleDetail[];
  /** Sideways room by the widest reading. */
  readonly cover?: CoverDetail;
  /** Why there is none though a width was read, and the way out. */
  readonly coverLacks?: string;
  /** Left out while there is no catalogue to set it against. */
  readonly ranking?: RankingDetail;
}
