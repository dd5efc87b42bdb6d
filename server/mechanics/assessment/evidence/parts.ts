import type { PartTool } from '../../../../shared/schemas/part-words.ts';
import type { EvidenceEntry } from './common.ts';

/* Parts in the hand. */

export interface PartEvidence extends EvidenceEntry {
  readonly kind: string;
  /** Which part in the hand; the first of a build has no id. */
  readonly partId?: string;
  /** As it was read; of a pitch that was counted the length that the threads go over. */
  readonly size?: number;
  /** The unit that it was entered in; left out, inches. */
  readonly unit?: string;
  readonly tool?: PartTool;
  /** How far off it may be, half-width, where that was typed. */
  readonly typedWithin?: number;
  /** Threads that the length goes over. */
  readonly count?: number;
  readonly word?: string;
  readonly typed: string;
  readonly readAs: string;
}

/** What a part in the hand is called, and which arm of the build it is. */
export interface HandPartEvidence {
  /** The first part of a build has none. */
  readonly id?: string;
  readonly name: string;
  readonly armId?: string;
}
