import type { GapBounds } from '../common/gap-said.ts';
import type { LimitEvidence, ScanPoint, ValvePlace } from '../evidence.ts';
import type { GapWord } from '../words.ts';

/** One scan that stands, for its table and its drawing. SI. */
export interface ScanDetail extends ValvePlace {
  readonly scanId: string;
  readonly line: number;
  readonly arms: 'these' | 'before';
  /** With which arms it was read, where those are not simply what is on. */
  readonly withArms: string;
  /** Figures in order of the crank, one to an angle. */
  readonly stations: readonly { readonly crankAngle: number; readonly gap: number }[];
  /** Readings between gauges. */
  readonly between: readonly ScanPoint[];
  readonly least: GapBounds;
  readonly crankAngle?: number;
  /** Whether the least was read at an end of the scan, in order of crank angle. */
  readonly edge?: 'none' | 'first' | 'last';
  /** The curve: between which crank angles, and how fast it bends [m/rad²]. */
  readonly curve?: { readonly from: number; readonly to: number; readonly bend: number };
  readonly limit: LimitEvidence;
  readonly word?: GapWord;
  readonly lacks: readonly string[];
  readonly said: string;
  readonly questionIds: readonly string[];
}

export interface ScansDetail {
  readonly scans: readonly ScanDetail[];
}
