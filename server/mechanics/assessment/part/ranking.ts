import { isPartFeature, isPartSize } from '../../../../shared/schemas/part-words.ts';
import { identify } from '../../identify/identify.ts';
import type { FeatureKind, SizeKind } from '../../identify/kinds.ts';
import type { Family, PartReadings, Reason } from '../../identify/types.ts';
import { IN } from '../../kit/si.ts';
import type { Headline } from '../assessment.ts';
import type { PartEvidence } from '../evidence.ts';
import { chanceOf } from './chance.ts';
import type { CandidateDetail, RankingDetail, ReasonDetail } from './detail.ts';
import type { FamilyEvidence } from './family.ts';
import { tellOf } from './tell.ts';

/** The rest of a long catalogue has no share worth telling. */
const MOST = 20;

/** Finer than any size is written; coarser than what the way to metres and back leaves behind. */
const DIGITS = 1e9;
const toInches = (si: number): number => Math.round((si / IN) * DIGITS) / DIGITS;

function inInches(sizes: FamilyEvidence['sizes']): Family['sizes'] {
  const inches: Partial<Record<SizeKind, number>> = {};
  for (const [kind, size] of Object.entries(sizes)) if (isPartSize(kind)) inches[kind] = toInches(size);
  return inches;
}

const familyOf = ({ id, weight, sizes, features }: FamilyEvidence): Family => ({
  id,
  weight,
  sizes: inInches(sizes),
  features,
});

/** Sizes in inches and words by kind, as the ranking takes them. Marks stay out of it. */
function asRead(readings: readonly PartEvidence[]): PartReadings {
  const sizes: Partial<Record<SizeKind, number[]>> = {};
  const features: Partial<Record<FeatureKind, string[]>> = {};
  for (const { kind, size, word } of readings) {
    if (isPartSize(kind) && size !== undefined) sizes[kind] = [...(sizes[kind] ?? []), toInches(size)];
    if (isPartFeature(kind) && word !== undefined) features[kind] = [...(features[kind] ?? []), word];
  }
  return { sizes, features };
}

const metres = (value: number | string): number | string => (typeof value === 'number' ? value * IN : value);

const reasonOf = ({ kind, word, reading, madeFor, difference }: Reason): ReasonDetail => ({
  kind,
  word,
  reading: metres(reading),
  ...(madeFor === undefined ? {} : { madeFor: metres(madeFor) }),
  ...(difference === undefined ? {} : { difference: difference * IN }),
});

/** The part against the shop's catalogue, from its readings in an order that does not hang on their entry. */
export function rankingOf(
  readings: readonly PartEvidence[],
  families: readonly FamilyEvidence[] | undefined,
): RankingDetail | undefined {
  if (families === undefined || families.length === 0) return undefined;
  const byId = new Map(families.map((family) => [family.id, family]));
  // Families that nothing tells apart stand by their codes, which are the same tomorrow and in a copy of the shop.
  const byCode = families.toSorted((a, b) => (a.code < b.code ? -1 : a.code > b.code ? 1 : 0));
  const found = identify(byCode.map(familyOf), asRead(readings));
  const candidates = found.candidates.slice(0, MOST).flatMap((candidate): CandidateDetail[] => {
    const family = byId.get(candidate.id);
    if (family === undefined) return [];
    return [{ ...chanceOf(candidate.probability), family, reasons: candidate.reasons.map(reasonOf) }];
  });
  return {
    families: families.length,
    counted: readings.filter(({ kind }) => isPartSize(kind) || isPartFeature(kind)).length,
    candidates,
    noneOfThese: chanceOf(found.noneOfThese),
    offers: found.offers,
    tell: tellOf(candidates, found.noneOfThese, found.offers),
  };
}

/** The family that stands first with its chance, and that of none of them; never a name without it. */
export function familyHeadline(ranking: RankingDetail | undefined): Headline[] {
  const first = ranking?.candidates[0];
  if (ranking === undefined || first === undefined || ranking.counted === 0) return [];
  const { noneOfThese: none } = ranking;
  return [
    {
      id: 'headline:part:family',
      about: { of: 'part' },
      step: 'identify',
      sentence:
        none.probability >= first.probability
          ? `The part: none of the catalogue’s families stands first, ${none.share}.`
          : `The part: ${first.family.name} stands first, ${first.share}; none of these ${none.share}.`,
    },
  ];
}
