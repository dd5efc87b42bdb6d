import type { ValveName } from '../../../shared/schemas/words.ts';
/** What was read of one valve, in metres; a figure is left out where there is none. */
export interface SheetValve {
  readonly cylinder: number;
  readonly valve: ValveName;
  readonly lobeLift?: number;
  readonly valveLift?: number;
}

export type OddCause = 'lobe' | 'rocker-or-position' | 'both' | 'measure-lobe' | 'cannot-tell';

/** A valve that does not read like its siblings, and what that says of it. */
export interface OddValve {
  readonly cylinder: number;
  readonly valve: ValveName;
  /** Valve lift less the median of its side [m]; left out where it was not read. */
  readonly valveOff?: number;
  /** Lobe lift less the median of its side [m]. */
  readonly lobeOff?: number;
  /** Past the critical score of the median method, beside being off by the stated amount. */
  readonly outlier: boolean;
  readonly cause: OddCause;
  readonly words: string;
}

export interface SideJudged {
  readonly side: ValveName;
  readonly medians: { readonly lobeLift?: number; readonly valveLift?: number; readonly ratio?: number };
  readonly odd: readonly OddValve[];
  /** Lobes that lie off by what makes a valve odd, under valves that lift like the others. */
  readonly lobesUnlike: readonly {
    readonly cylinder: number;
    readonly valve: ValveName;
    readonly off: number;
  }[];
  /** How far the lifts lie apart, where they have no middle and which is off can’t be told [m]. */
  readonly apart?: number;
  /** Lobes that lie as far apart as a worn one is down, with nothing to tell which of them are down [m]. */
  readonly lobesApart?: {
    readonly apart: number;
    readonly places: readonly { readonly cylinder: number; readonly valve: ValveName }[];
  };
  /** Lobes so far down that they are worn. */
  readonly lobesDown: readonly {
    readonly cylinder: number;
    readonly valve: ValveName;
    readonly by: number;
  }[];
}
