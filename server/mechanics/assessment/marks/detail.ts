import type { ShortAdvice } from '../../tip-mark/advice-short.ts';
import type { LengthOver } from '../../tip-mark/types.ts';
import type { LimitEvidence, Side, TipMarkEvidence, ValvePlace } from '../evidence.ts';

/** The least sweep that a lift can have on an arm, with what it is calculated from. SI. */
export interface LeastSweepDetail {
  readonly value?: number;
  readonly low?: number;
  readonly high?: number;
  /** Arm and lift that it is of. */
  readonly arm?: number;
  readonly lift?: number;
  readonly from: readonly string[];
  readonly lacks: readonly string[];
  readonly restsOn: readonly string[];
}

/**
 * Why the marks of a valve let no length stay yet: another one is tried, its stem, whether it stays on that, or over what a length was taken is not
 * said, none of two on opposite sides counts, one is off sideways, they contradict each other, the width has no word, no length makes it
 * ordinary, or like valves ask for unlike lengths.
 */
export type WhyNoLength =
  | 'try'
  | 'stem'
  | 'edge'
  | 'over'
  | 'apart'
  | 'sideways'
  | 'contradict'
  | 'width'
  | 'heights'
  | 'unlike';

/** The marks of one valve; the one that is judged is the narrowest, and of those as narrow the nearest the middle. */
export interface MarkedValveDetail extends ValvePlace {
  readonly marks: readonly TipMarkEvidence[];
  readonly judgedId: string;
  /** No other mark made alike to compare it with: of this valve, or of another on its side. */
  readonly alone: boolean;
  /** What a mark over the ordinary is called wide by: the band of the trade, or a narrower one made alike. */
  readonly wideBy?: 'band' | 'beside';
  /** Up to where the trade counts a mark as ordinary. */
  readonly ordinaryTo: number;
  /** One of them counts; of two that pull apart none may. */
  readonly holds: boolean;
  /** It is near the edge of a stem that nobody measured. */
  readonly stemOpen: boolean;
  /** Of a follower: its place is told by its pivot. */
  readonly follower: boolean;
  readonly least: LeastSweepDetail;
  /** The least and what the limit allows over it. */
  readonly lookAgainOver?: number;
  /** What to change next, from all of its marks; left out where they or the mounting don’t say. */
  readonly advice?: string;
  /** What is asked or done first, in one short sentence, with the question that it is of. */
  readonly first?: ShortAdvice & { readonly questionId?: string };
  /** Where a pushrod’s length moves the mark: which one may stay, or why none may yet. */
  readonly length?:
    | { readonly how: 'open'; readonly because: WhyNoLength }
    | { readonly how: 'stays'; readonly at?: number | undefined; readonly over?: LengthOver | undefined };
  /** Which way the marks ask a stand or pedestal to go. */
  readonly height?: 'raise' | 'lower';
  readonly questionIds: readonly string[];
}

export interface MarksDetail {
  readonly limit: LimitEvidence;
  /** What is told in the place of the height that was worked out, while the marks ask for the other way. */
  readonly stand?: { readonly said: string };
  readonly valves: readonly MarkedValveDetail[];
  /** The least sweep of either side, for a valve without a mark. */
  readonly leastOfSides: readonly { readonly side: Side; readonly least: LeastSweepDetail }[];
}
