import type { PartTool } from '../../../shared/schemas/part-words.ts';
import type { FeatureKind, PartKind, SizeKind } from './kinds.ts';

/** A part family as the catalogue has it. Sizes are those it is made for, inches; one left out is not known. */
export interface Family {
  readonly id: string;
  /** How often this family comes in, against the others; 1 is ordinary. */
  readonly weight: number;
  readonly sizes: Readonly<Partial<Record<SizeKind, number>>>;
  readonly features: Readonly<Partial<Record<FeatureKind, string>>>;
}

/** One reading of a size, inches. */
export interface ReadSize {
  readonly value: number;
  /** Left out, by caliper. */
  readonly tool?: PartTool;
  /** How far off it may be, half-width; left out, as that tool may be. */
  readonly within?: number;
}

/** What was read of the part in the hand: every reading of a size that stands, inches, and what was seen. */
export interface PartReadings {
  readonly sizes: Readonly<Partial<Record<SizeKind, readonly ReadSize[]>>>;
  readonly features: Readonly<Partial<Record<FeatureKind, readonly string[]>>>;
}

export type ReadingWord = 'agrees' | 'cannot-tell' | 'differs';

/** One reading set against one family. */
export interface Reason {
  readonly kind: PartKind;
  /** `not-known`: the catalogue does not say. */
  readonly word: ReadingWord | 'not-known';
  readonly reading: number | string;
  readonly madeFor?: number | string;
  /** Reading less the size the part is made for, inches. */
  readonly difference?: number;
  /** How far off the reading may be, half-width, inches; a size alone has it. */
  readonly within?: number;
  /** Nobody measured it. */
  readonly guess?: boolean;
}

interface Candidate {
  readonly id: string;
  /** 0 to 1. */
  readonly probability: number;
  readonly reasons: readonly Reason[];
}

/** What one more measurement is worth. */
export interface Offer {
  readonly kind: PartKind;
  /** Expected information about which family it is, bits. */
  readonly bits: number;
  /** Chance that the family then standing first is the right one, 0 to 1. */
  readonly rightFirst: number;
}

/** Readings of one size that are further apart than reading alone explains. */
export interface Apart {
  readonly kind: SizeKind;
  readonly readings: readonly number[];
  readonly allowed: number;
}

export interface Ranking {
  /** Every family of the catalogue, likeliest first. */
  readonly candidates: readonly Candidate[];
  /** Probability that the part is in no line of the catalogue, 0 to 1. */
  readonly noneOfThese: number;
  readonly apart: readonly Apart[];
}

export interface Identification extends Ranking {
  /** Measurements not taken yet, the one that settles most first. */
  readonly offers: readonly Offer[];
}
