import type { FeatureKind, SizeKind } from '../../identify/kinds.ts';

/** A line of the shop's catalogue. Sizes are those it is made for, in metres; one left out is not known. */
export interface FamilyEvidence {
  readonly id: string;
  readonly code: string;
  readonly name: string;
  /** What it fits, in the catalogue's words; may be empty. */
  readonly fits: string;
  readonly nominalRatio?: number;
  /** How often it comes in, against the others; 1 is ordinary. */
  readonly weight: number;
  readonly sizes: Readonly<Partial<Record<SizeKind, number>>>;
  readonly features: Readonly<Partial<Record<FeatureKind, string>>>;
}
