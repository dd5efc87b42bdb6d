import table from '../../../seeds/identification-model.json' with { type: 'json' };
import type { FeatureKind, SizeKind } from './kinds.ts';

/** One way in which a reading goes wrong; shares sum to 1. Inches. */
export interface ErrorLine {
  readonly share: number;
  readonly bias: number;
  readonly spread: number;
}

interface Band {
  readonly below: number;
  readonly above: number;
}

/** How one size reads, and what it is on a part that is not in the catalogue. Inches. */
export interface SizeModel {
  readonly title: string;
  /** Those of a caliper. */
  readonly errors: readonly ErrorLine[];
  /** As much of the bias as a caliper's inside jaws give. */
  readonly jawBias?: number;
  /** Spread of two readings at one place about their common error. */
  readonly repeat: number;
  /** The most by which two readings at one place differ and still speak of one size. */
  readonly apart: number;
  readonly agrees: Band;
  readonly cannotTell: Band;
  readonly allowed: { readonly least: number; readonly most: number };
  readonly unknown: {
    readonly nominals: readonly { readonly at: number; readonly share: number }[];
    readonly elsewhere: { readonly share: number; readonly mean: number; readonly spread: number };
  };
  /** Order of trouble: the lower, the sooner it is asked when two are worth the same. */
  readonly ease: number;
  readonly source: string;
}

export interface FeatureModel {
  readonly title: string;
  /** Chance that something else is said than what is there. */
  readonly misread: number;
  readonly unknown: readonly { readonly word: string; readonly share: number }[];
  readonly ease: number;
  readonly source: string;
}

export interface IdentificationModel {
  /** The chance from which a family is named in a headline. */
  readonly named: { readonly from: number; readonly source: string };
  /** What is made of a chance in words, and what is asked and measured by it. */
  readonly told: {
    readonly nearlySettled: number;
    readonly likely: number;
    readonly possible: number;
    readonly noneTakesAll: number;
    readonly fitsWithoutOne: number;
    readonly fewestKinds: number;
    readonly worthReading: number;
    readonly rival: number;
    readonly source: string;
  };
  readonly noneOfThese: {
    readonly prior: number;
    /** Share of them that are relatives of a part in the catalogue, and the chance that a size is the same. */
    readonly relative: { readonly share: number; readonly same: number };
    readonly source: string;
  };
  readonly sizes: Readonly<Record<SizeKind, SizeModel>>;
  readonly features: Readonly<Record<FeatureKind, FeatureModel>>;
}

/** The stated model, from its seed table with its sources. */
export const IDENTIFICATION_MODEL: IdentificationModel = table;
