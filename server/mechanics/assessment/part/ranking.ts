import { defined } from '../../../../shared/defined.ts';
import { isPartFeature, isPartSize } from '../../../../shared/schemas/part-words.ts';
import { familyChances, identify } from '../../identify/identify.ts';
import type { FeatureKind, SizeKind } from '../../identify/kinds.ts';
import type { Family, PartReadings, ReadSize, Reason } from '../../identify/types.ts';
import { IN } from '../../kit/si.ts';
import type { PartEvidence } from '../evidence.ts';
import { chanceOf } from './chance.ts';
import type { Chance, ImpliedDetail, RankingDetail, ReasonDetail } from './detail.ts';
import type { FamilyEvidence } from './family.ts';
import { impliedBy } from './implied.ts';
import { asReadSize, toInches } from './read-size.ts';
import { reasonSaid } from './reason-said.ts';

/** One family with its chance, as the headline weighs it. */
export interface Ranked {
  readonly family: FamilyEvidence;
  readonly chance: Chance;
  readonly reasons: readonly ReasonDetail[];
}

/** The part against the catalogue with every chance; what of it is told, the headline decides. */
export interface Ranking extends Pick<RankingDetail, 'families' | 'counted' | 'kinds' | 'offers'> {
  readonly candidates: readonly Ranked[];
  readonly noneOfThese: Chance;
  /** The kinds that were read. */
  readonly read: ReadonlySet<string>;
  readonly implied: readonly ImpliedDetail[];
}

/** The rest of a long catalogue has no share worth telling. */
const MOST = 20;

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

interface Catalogue {
  readonly families: readonly FamilyEvidence[];
  readonly made: readonly Family[];
}

const known = new WeakMap<readonly FamilyEvidence[], Catalogue>();

/** Families that nothing tells apart stand by their codes, which are the same tomorrow and in a copy of the shop. */
function inCodes(families: readonly FamilyEvidence[]): Catalogue {
  const before = known.get(families);
  if (before !== undefined) return before;
  const byCode = families.toSorted((a, b) => (a.code < b.code ? -1 : a.code > b.code ? 1 : 0));
  const catalogue = { families: byCode, made: byCode.map(familyOf) };
  known.set(families, catalogue);
  return catalogue;
}

/** Sizes in inches and words by kind, as the ranking takes them. Marks stay out of it. */
function asRead(readings: readonly PartEvidence[]): PartReadings {
  const sizes: Partial<Record<SizeKind, ReadSize[]>> = {};
  const features: Partial<Record<FeatureKind, string[]>> = {};
  for (const { kind, size, word, ...how } of readings) {
    if (isPartSize(kind) && size !== undefined)
      sizes[kind] = [...(sizes[kind] ?? []), asReadSize({ size, ...how })];
    if (isPartFeature(kind) && word !== undefined) features[kind] = [...(features[kind] ?? []), word];
  }
  return { sizes, features };
}

/** The family that stands first for these readings, and the chance of none of them. */
export function firstOf(
  readings: readonly PartEvidence[],
  families: readonly FamilyEvidence[],
): { readonly family?: FamilyEvidence; readonly probability: number; readonly noneOfThese: number } {
  const catalogue = inCodes(families);
  const p = familyChances(catalogue.made, asRead(readings));
  const none = p.at(-1) ?? 1;
  const most = p.slice(0, -1).reduce((best, each, index, all) => (each > (all[best] ?? 0) ? index : best), 0);
  const family = catalogue.families[most];
  return { ...(family === undefined ? {} : { family }), probability: p[most] ?? 0, noneOfThese: none };
}

const metres = (value: number | string): number | string => (typeof value === 'number' ? value * IN : value);

function reasonOf({ kind, word, reading, madeFor, difference, within, guess }: Reason): ReasonDetail {
  const reason = {
    kind,
    word,
    reading: metres(reading),
    ...(madeFor === undefined ? {} : { madeFor: metres(madeFor) }),
    ...(difference === undefined ? {} : { difference: difference * IN }),
    ...(within === undefined ? {} : { within: within * IN }),
    ...defined({ guess }),
  };
  return { ...reason, said: reasonSaid(reason) };
}

const isThreadRead = (readings: readonly PartEvidence[]): boolean =>
  ['stud-diameter', 'stud-pitch'].every((kind) => readings.some((each) => each.kind === kind));

const kindsOf = (readings: readonly PartEvidence[]): ReadonlySet<string> =>
  new Set(readings.map(({ kind }) => kind).filter((kind) => isPartSize(kind) || isPartFeature(kind)));

/** The part against the shop's catalogue, from its readings in an order that does not hang on their entry. */
export function rankingOf(
  readings: readonly PartEvidence[],
  families: readonly FamilyEvidence[] | undefined,
): Ranking | undefined {
  if (families === undefined || families.length === 0) return undefined;
  const byId = new Map(families.map((family) => [family.id, family]));
  const found = identify(inCodes(families).made, asRead(readings));
  const all = found.candidates.flatMap(({ id, ...candidate }) => {
    const family = byId.get(id);
    return family === undefined ? [] : [{ ...candidate, family }];
  });
  const candidates = all.slice(0, MOST).map(
    ({ family, probability, reasons }): Ranked => ({
      chance: chanceOf(probability),
      family,
      reasons: reasons.map(reasonOf),
    }),
  );
  const read = kindsOf(readings);
  return {
    families: families.length,
    counted: readings.filter(({ kind }) => isPartSize(kind) || isPartFeature(kind)).length,
    kinds: read.size,
    read,
    candidates,
    noneOfThese: chanceOf(found.noneOfThese),
    offers: found.offers,
    implied: impliedBy(all, found.noneOfThese, { threadRead: isThreadRead(readings) }),
  };
}
