import type { ValveName } from '../../../../shared/schemas/words.ts';

/* What entries of every kind share. */

export type Side = 'intake' | 'exhaust';
export type Spring = 'not-said' | 'light' | 'running';
export type LifterState = 'not-said' | 'solid' | 'locked' | 'hydraulic';
export type LashState = 'not-said' | 'zero' | 'set';

export interface ValvePlace {
  readonly cylinder: number;
  readonly valve: ValveName;
}

/** An entry of the record. One that was replaced or struck out is shown and not judged. */
export interface EvidenceEntry {
  readonly id: string;
  readonly line: number;
  /** The line it was first entered at, where it was put right since. */
  readonly entered?: number;
  readonly standing: boolean;
}

/** A length that was read, or the gauges it lies between. */
export interface Bounds {
  readonly value?: number;
  readonly low?: number;
  readonly high?: number;
}
