import type { PartKind } from '../../identify/kinds.ts';
import type { Offer, ReadingWord } from '../../identify/types.ts';
import type { PartSubject } from '../assessment.ts';
import type { FamilyEvidence } from './family.ts';

/** One reading set against one family; sizes in metres. */
export interface ReasonDetail {
  readonly kind: PartKind;
  /** `not-known`: the catalogue does not say. */
  readonly word: ReadingWord | 'not-known';
  readonly reading: number | string;
  readonly madeFor?: number | string;
  readonly difference?: number;
  /** How far off a reading of a size may be, half-width. */
  readonly within?: number;
  readonly guess?: boolean;
  /** `roller diameter .496 in ± .002 against .500 in` */
  readonly said: string;
}

/** How likely something is, as a figure and as it is read out. */
export interface Chance {
  readonly probability: number;
  /** `46 %` */
  readonly share: string;
  /** `Possible` */
  readonly likely: string;
}

export interface CandidateDetail {
  /** Left out while no family is named. */
  readonly chance?: Chance;
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
  /** How many kinds of reading those are. */
  readonly kinds: number;
  /** Likeliest first; of a long catalogue the first few alone. */
  readonly candidates: readonly CandidateDetail[];
  /** The headline tells a chance; until then no face has one, nor what would follow from a family. */
  readonly told: boolean;
  /** Left out while no family is named. */
  readonly noneOfThese?: Chance;
  readonly offers: readonly Offer[];
  readonly tell: TellDetail;
  /** What the family that stands first means for what goes with it; nothing, while none is named. */
  readonly implied: readonly ImpliedDetail[];
}

export interface ImpliedDetail {
  readonly what: 'stud' | 'cover' | 'guide';
  readonly title: string;
  /** Of the family that stands first, and of all that mean the same. */
  readonly probability: number;
  readonly together: number;
  readonly sentence: string;
}

/** One reading of the part: how it was read, and what became of it. */
export interface PartReadingDetail {
  readonly entryId: string;
  /** Tool and half-width as they are read out; empty for what is no size. */
  readonly how: string;
  /** Half-width of a size. */
  readonly within?: number;
  readonly guess: boolean;
  /** `waits`: for the answer to a question; `left-out`: by that answer. */
  readonly counts: 'yes' | 'waits' | 'left-out';
  readonly questionId?: string;
  /** What became of it, where it does not count as it was read. */
  readonly said?: string;
}

/** A size that parts are ordinarily made with, set against a reading; metres. */
export interface OrdinarySize {
  readonly name: string;
  readonly madeFor: number;
  readonly offset: number;
  readonly word: ReadingWord;
}

export interface OrdinaryDetail {
  readonly entryId: string;
  readonly kind: string;
  readonly title: string;
  readonly readAs: string;
  /** The nearest first. */
  readonly sizes: readonly OrdinarySize[];
  /** Where no size is ordinary, and a range is. */
  readonly range?: { readonly low: number; readonly high: number; readonly word: ReadingWord };
}

export interface StudThread {
  readonly designation: string;
  readonly word: ReadingWord;
  /** Diameter as read past the limits of the thread; 0 within them. */
  readonly offset?: number;
  readonly pitchOffset?: number;
}

/** The stud or bolt that came out. */
export interface StudDetail {
  readonly entryIds: readonly string[];
  /** What of it was read. */
  readonly by: readonly ('diameter' | 'pitch')[];
  /** Two readings of one of them cannot both be right. */
  readonly apart: boolean;
  readonly threads: readonly StudThread[];
  /** Designations in reach. */
  readonly named: readonly string[];
  readonly pitch?: { readonly value: number; readonly within: number };
  /** What is still to read. */
  readonly lacks?: string;
  /** What it measures, to go on from: `The stud or bolt that came out has .4370 in over the thread`. */
  readonly measures: string;
  readonly sentence: string;
}

/** The ratio by the arms of a loose part: an estimate, or why there is none. */
export type BenchRatioDetail =
  | { readonly entryIds: readonly string[]; readonly lacks: string }
  | {
      readonly entryIds: readonly string[];
      readonly lacks?: undefined;
      readonly quantityId: string;
      readonly ratio: number;
      readonly low: number;
      readonly high: number;
      readonly inReach: readonly number[];
      /** `1.59`, and `1.57 to 1.61` */
      readonly value: string;
      readonly interval: string;
      readonly sentence: string;
    };

/** A thread, with the hole that is made for it. */
interface HoleThread {
  readonly designation: string;
  readonly fit: ReadingWord;
  readonly madeFor: number;
  /** The hole as read less that. */
  readonly offset: number;
}

/** What one reading of the hole says of the stud or bolt. */
export interface HoleDetail {
  readonly entryId: string;
  readonly readAs: string;
  /** The reading against the sizes that rockers are made for, with what of them. */
  readonly word: ReadingWord;
  readonly said: string;
  /** The size that was tried through it by hand and goes without play; `none` where none does. */
  readonly tried?: string;
  readonly threads: readonly HoleThread[];
  /** The nearest of those that are out of reach. */
  readonly others: readonly HoleThread[];
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

/** What a part in the hand says of its family, of its fastener and of the room under the cover. */
export interface PartDetail {
  readonly about: PartSubject;
  /** What its ids begin with. */
  readonly key: string;
  /** Which arm of the build it is, with its marks and its valve. */
  readonly arm?: { readonly armId: string; readonly sentence: string };
  readonly readings: readonly PartReadingDetail[];
  readonly ordinary: readonly OrdinaryDetail[];
  readonly stud?: StudDetail;
  readonly benchRatio?: BenchRatioDetail;
  /** One answer for each reading of the hole: two directions are never one of their mean. */
  readonly holes: readonly HoleDetail[];
  /** Sideways room by the widest reading. */
  readonly cover?: CoverDetail;
  /** Why there is none though a width was read, and the way out. */
  readonly coverLacks?: string;
  /** Left out while there is no catalogue to set it against. */
  readonly ranking?: RankingDetail;
}
