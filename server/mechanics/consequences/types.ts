import type { GapKind } from '../../../shared/schemas/sheet.ts';
import type { Verdict } from '../kit/verdict.ts';

/** A ratio with the half-width of its 95 % interval. */
export interface RatioFigure {
  readonly value: number;
  readonly halfWidth: number;
  /** It was taken with the lash set: the lift it makes carries the lash, and none is taken off again. */
  readonly lashIn?: boolean;
}

/** A gap in metres: a best value where there is one, and the ends it lies between as far as they are known. */
export interface Gap {
  readonly value?: number;
  readonly low?: number;
  readonly high?: number;
}

/** A gap that somebody read on this valve. */
export interface MeasuredGap extends Gap {
  readonly readAs: string;
  readonly lifter: 'not-said' | 'solid' | 'locked' | 'hydraulic';
}

export interface LimitFigure {
  readonly value: number;
  readonly source: string;
}

/** What is known of one valve and its engine, in SI; whatever is not known is left out. */
export interface ConsequenceInput {
  readonly side: 'intake' | 'exhaust';
  /** The ratio the cam card assumes. */
  readonly before?: RatioFigure;
  /** The ratio that was measured. */
  readonly after?: RatioFigure & { readonly spring: 'light' | 'running' };
  readonly lobeLift?: number;
  readonly lash?: number;
  readonly lifter?: 'solid' | 'hydraulic';
  readonly mounting?: 'stud' | 'pedestal' | 'shaft';
  readonly spring: {
    readonly installedHeight?: number;
    readonly seatLoad?: number;
    readonly rate?: number;
    readonly solidHeight?: number;
    readonly retainerToSeal?: number;
  };
  readonly crank: {
    readonly stroke?: number;
    readonly rodLength?: number;
    readonly pinOffset?: number;
    readonly valveAngle?: number;
  };
  readonly lobe: {
    readonly centreline?: number;
    readonly durations?: readonly { readonly atLift: number; readonly duration: number }[];
  };
  readonly closedGapAtTdc?: number;
  readonly pistonFloor?: 'pocket' | 'flat';
  /** Read with the arms of the card's ratio. */
  readonly pushrodToHead?: number;
  readonly pivotToTip?: number;
  readonly measured: {
    readonly these: Partial<Record<GapKind, MeasuredGap>>;
    readonly before: Partial<Record<GapKind, MeasuredGap>>;
  };
  readonly limits: Readonly<Record<GapKind, LimitFigure>>;
}

/** How a gap comes about. */
type Basis = 'measured' | 'calculated';
export type KnownGap = Gap & { readonly basis: Basis };

/** One gap before and after, set against its limit. */
export interface GapRow {
  readonly name: GapKind;
  readonly title: string;
  readonly before?: KnownGap;
  readonly after?: KnownGap;
  readonly limit: LimitFigure;
  /** Left out while the gap after is not known. */
  readonly verdict?: Verdict;
  /** Why it is no better than it is. */
  readonly because: readonly string[];
  /** Inputs it still lacks; with `measure`, nothing but a measured gap will do. */
  readonly missing: readonly string[];
  readonly measure: boolean;
}

/** A figure that has no limit of its own, before and after. */
export interface FigureRow {
  readonly name: 'net-lift' | 'open-load' | 'pushrod-load' | 'pivot-load' | 'least-sweep' | 'pivot-offset';
  readonly title: string;
  readonly dimension: 'length' | 'load';
  readonly before?: number;
  readonly after?: number;
  /** Half-width of the figure after, from the interval of the ratio. */
  readonly halfWidth?: number;
  readonly missing: readonly string[];
}

export interface Consequences {
  readonly figures: readonly FigureRow[];
  readonly gaps: readonly GapRow[];
  /** Where some gap is short. */
  readonly stop: boolean;
  readonly adjusters: string;
  readonly assumptions: readonly string[];
  readonly cautions: readonly string[];
}
