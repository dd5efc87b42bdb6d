import { inches } from '../../../shared/schemas/entered.ts';
import { isPartFeature, isPartSize } from '../../../shared/schemas/part-words.ts';
import { identify } from '../../mechanics/identify/identify.ts';
import type { FeatureKind, SizeKind } from '../../mechanics/identify/kinds.ts';
import type { Candidate, Offer, PartReadings } from '../../mechanics/identify/types.ts';
import type { PartFamily } from '../../records/catalogue/families.ts';
import { stillStanding } from '../../records/corrections/entries.ts';
import type { PartReading } from '../../records/part-readings/part-readings.ts';
import type { BuildRecord } from '../../records/whole-build/build-record.ts';
import { type CoverAnswer, coverOf, fastenersOf, type HoleAnswer } from './fasteners.ts';
import { type PartQuestion, partQuestions } from './mark-questions.ts';

export interface RankedFamily extends Candidate {
  readonly family: PartFamily;
}

/** What the part in the hand may be, and what follows from what was read of it. */
export interface PartIdentification {
  /** Every reading, replaced ones included. */
  readonly readings: readonly PartReading[];
  readonly standing: readonly PartReading[];
  /** Families in the shop's catalogue. */
  readonly families: number;
  readonly candidates: readonly RankedFamily[];
  readonly noneOfThese: number;
  readonly offers: readonly Offer[];
  readonly fasteners: readonly HoleAnswer[];
  readonly cover: CoverAnswer | undefined;
  readonly coverBolting: 'through-centre' | 'perimeter' | undefined;
  readonly questions: readonly PartQuestion[];
}

/** Sizes in inches and words by kind, as the ranking takes them. Marks stay out of it. */
function asRead(standing: readonly PartReading[]): PartReadings {
  const sizes: Partial<Record<SizeKind, number[]>> = {};
  const features: Partial<Record<FeatureKind, string[]>> = {};
  for (const { kind, size, word } of standing) {
    if (isPartSize(kind) && size !== undefined) sizes[kind] = [...(sizes[kind] ?? []), inches(size)];
    if (isPartFeature(kind) && word !== undefined) features[kind] = [...(features[kind] ?? []), word];
  }
  return { sizes, features };
}

/** Ranks the part of a build against the shop's catalogue. */
export function identifyPart(
  { build: { spec }, partReadings: readings }: BuildRecord,
  families: readonly PartFamily[],
): PartIdentification {
  const standing = stillStanding(readings);
  const byId = new Map(families.map((family) => [family.id, family]));
  const found = identify(families, asRead(standing));
  const coverBolting = spec.engine?.coverBolting;
  return {
    readings,
    standing,
    families: families.length,
    candidates: found.candidates.flatMap((candidate) => {
      const family = byId.get(candidate.id);
      return family === undefined ? [] : [{ ...candidate, family }];
    }),
    noneOfThese: found.noneOfThese,
    offers: found.offers,
    fasteners: fastenersOf(standing),
    cover: coverOf(standing, coverBolting),
    coverBolting,
    questions: partQuestions(standing, found.apart),
  };
}
