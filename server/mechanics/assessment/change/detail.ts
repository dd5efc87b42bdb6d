import type { Closest } from '../../consequences/piston-gap.ts';
import type { FigureRow } from '../../consequences/types.ts';
import type { AssessedQuestion, Basis, Subject } from '../assessment.ts';
import type { GapBounds } from '../common/gap-said.ts';
import type { Lack } from '../common/lack.ts';
import type { GapName, LimitEvidence } from '../evidence.ts';
import type { GapWord } from '../words.ts';

/** A ratio before or after a change, with where it is from. */
export interface ChangeRatio {
  readonly from: 'card' | 'sold-as' | 'family' | 'planned' | 'measured';
  readonly basis: Basis;
  readonly value: number;
  readonly low: number;
  readonly high: number;
  /** Of a measured one only. */
  readonly spring?: 'light' | 'running';
  /** Its lift carries the lash already, or may: none is taken off again. */
  readonly lashIn: boolean;
  readonly lacks: readonly Lack[];
  readonly restsOn: readonly string[];
  /** `the planned 1.65`, `the measured 1.612` */
  readonly said: string;
  /** Where its interval is from, e.g. the allowance of an arm that is not measured yet. */
  readonly source: string;
}

/** A figure that has no limit of its own, before and after. SI. */
export interface ChangeFigure {
  readonly name: FigureRow['name'];
  readonly title: string;
  readonly dimension: 'length' | 'load';
  readonly before?: number;
  readonly after?: { readonly value: number; readonly low: number; readonly high: number };
  readonly lacks: readonly string[];
  readonly quantityId: string;
}

/** Something to look at again, with what is known of it. */
export interface ChangeCheck {
  readonly id: string;
  readonly sentence: string;
}

export interface ChangeGap {
  readonly name: GapName;
  readonly title: string;
  /** `less`: what is taken off what was read, and why. */
  readonly before?: GapBounds & { readonly basis: 'measured' | 'calculated'; readonly less?: string };
  readonly after?: GapBounds & { readonly basis: 'measured' | 'calculated' };
  /** What a gap that was read comes out at, where it is calculated as well. */
  readonly worked?: GapBounds;
  /** The reading with other arms that this rests on. */
  readonly workedFrom?: string;
  /** A reading with other arms, and what the gap comes out at with those, where that is calculated as well. */
  readonly readThen?: { readonly entryId: string; readonly gap: GapBounds; readonly worked: GapBounds };
  /** What is asked of the lash in the gap before, where the word hangs on it. */
  readonly lashAsked?: AssessedQuestion;
  readonly limit: LimitEvidence;
  /** The gap after less its limit, where there is one figure for it. */
  readonly margin?: number;
  readonly word?: GapWord;
  /** Why it is no better than it is. */
  readonly because: readonly string[];
  readonly lacks: readonly Lack[];
  /** Nothing but a measured gap will do. */
  readonly measure: boolean;
  /** The sheet read and judged it. */
  readonly ofSheet?: boolean;
  readonly judgementId?: string;
  readonly restsOn: readonly string[];
}

/** What a ratio does on one valve, or on the valves of one side while none of them was read. */
export interface ChangeDetail {
  readonly id: string;
  /** What it is about, and which plan where there are several: `1-intake`, `exhaust:planned-1.7`. */
  readonly key: string;
  /** The ratio that is to be fitted, where one is. */
  readonly plan?: number;
  /** Another ratio is to be fitted: this one is thought of beside it. */
  readonly beside?: true;
  readonly about: Subject;
  readonly before?: ChangeRatio;
  readonly after?: ChangeRatio;
  /** A ratio was read and is not calculated with yet: what must be known first. */
  readonly notUsed?: string;
  /** What the springs open at with what is on now, where another ratio is planned and its stud may bear too much. */
  readonly today?: { readonly load: NonNullable<ChangeFigure['after']>; readonly said: string };
  readonly lobeLift?: number;
  readonly lash?: number;
  readonly figures: readonly ChangeFigure[];
  /** Worst first. */
  readonly gaps: readonly ChangeGap[];
  /** Valve and piston where they come closest, while that gap is calculated. */
  readonly closest?: Closest;
  /** What is looked at again with other arms. */
  readonly checks: readonly ChangeCheck[];
  /** What a turn of an adjuster does now; empty where nothing is known of it. */
  readonly adjusters: string;
  readonly assumptions: readonly string[];
  readonly cautions: readonly string[];
}
