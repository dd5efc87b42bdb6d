import type { GapKind } from '../../../shared/schemas/sheet.ts';
import type { Nest } from '../springs/nested.ts';

/** A ratio with the half-width of its 95 % interval. */
export interface RatioFigure {
  readonly value: number;
  readonly halfWidth: number;
  /** It was taken with the lash set: the lift it makes carries the lash, and none is taken off again. */
  readonly lashIn?: boolean;
}

/** What is known of the springs of a valve, in metres, newtons and newtons per metre. */
export interface SpringFigures {
  readonly installedHeight?: number;
  readonly seatLoad?: number;
  readonly rate?: number;
  readonly solidHeight?: number;
  readonly retainerToSeal?: number;
  /** Two springs on one valve: the figures above are of both together. */
  readonly nest?: Nest;
}

/** A gap in metres: a best value where there is one, and the ends it lies between as far as they are known. */
export interface Gap {
  readonly value?: number;
  readonly low?: number;
  readonly high?: number;
}

export interface LimitFigure {
  readonly value: number;
  readonly source: string;
}

/** A scan of piston to valve with the arms before: figures over the crank, how far one may be off, the lash in the lift. */
export interface ScanBefore {
  readonly stations: readonly { readonly crankAngle: number; readonly gap: number }[];
  readonly error: number;
  readonly lash: number;
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
  readonly spring: SpringFigures;
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
  /** Rise of the lifter where valve and piston were found closest. */
  readonly lobeLiftAtClosest?: number;
  /** It may be its lift at the top, or a guess: a lower ratio gives back between nothing and that. */
  readonly closestDoubted?: true;
  readonly pushrodToHead?: number;
  /** The arms it was read with: left out, those before. */
  readonly pushrodToHeadWith?: 'before' | 'after' | RatioFigure;
  readonly pivotToTip?: number;
  /** Gaps that were read on this valve with the arms before. */
  readonly readBefore: Partial<Record<GapKind, Gap>>;
  /** The scan that the gap of piston to valve before is the least of. */
  readonly scanBefore?: ScanBefore;
  readonly limits: Readonly<Record<GapKind, LimitFigure>>;
}

/** How a gap comes about. */
type Basis = 'measured' | 'calculated';
export type KnownGap = Gap & { readonly basis: Basis };

/** One gap after the change, with its limit beside it. */
export interface GapRow {
  readonly name: GapKind;
  readonly title: string;
  /** Which part it is of, where it is one of two and calculated from their figures. */
  readonly of?: string;
  readonly after?: KnownGap;
  readonly limit: LimitFigure;
  /** Inputs it still lacks; with `measure`, nothing but a measured gap will do. */
  readonly missing: readonly string[];
  readonly measure: boolean;
}

/** A figure that has no limit of its own, before and after. */
export interface FigureRow {
  readonly name:
    | 'gross-lift'
    | 'net-lift'
    | 'open-load'
    | 'pushrod-load'
    | 'pivot-load'
    | 'cup-move'
    | 'least-sweep'
    | 'pivot-offset';
  readonly title: string;
  readonly dimension: 'length' | 'load';
  readonly before?: number;
  readonly after?: number;
  /** Half-width of the figure after, from the interval of the ratio. */
  readonly halfWidth?: number;
  readonly missing: readonly string[];
}
