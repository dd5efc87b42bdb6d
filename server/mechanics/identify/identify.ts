import { accountsOf } from './accounts.ts';
import { beliefs, byFamily } from './beliefs.ts';
import { reasonsFor } from './compare.ts';
import { SIZE_KINDS } from './kinds.ts';
import { standTogether } from './likelihood.ts';
import { IDENTIFICATION_MODEL, type IdentificationModel } from './model.ts';
import { nextMeasurements } from './next-measurement.ts';
import type { Apart, Family, Identification, PartReadings, Ranking } from './types.ts';

function apartIn(model: IdentificationModel, readings: PartReadings): Apart[] {
  return SIZE_KINDS.flatMap((kind) => {
    const read = readings.sizes[kind] ?? [];
    if (read.length < 2 || standTogether(model.sizes[kind], kind, read)) return [];
    return [{ kind, readings: read.map(({ value }) => value), allowed: model.sizes[kind].apart }];
  });
}

/**
 * The chances of the families alone, in their order, and last of none of them.
 *
 * Equation: see `beliefs`.
 *
 * @param families [in] the shop's catalogue, sizes as made; may be empty
 * @param readings [in] readings that stand, each above 0
 * @param model [in] the measurement model; left out, the one of the seed table
 * @returns [1] as many as there are families and one more; they sum to 1
 * Validity: as for `rank`.
 * Source: as for `rank`.
 */
export function familyChances(
  families: readonly Family[],
  readings: PartReadings,
  model: IdentificationModel = IDENTIFICATION_MODEL,
): Float64Array {
  const accounts = accountsOf(model, families);
  return byFamily(accounts, beliefs(model, accounts, readings), families.length);
}

/**
 * Which family of the catalogue a rocker in the hand is, from what was read of it.
 *
 * Equation: see `beliefs` for the probabilities and `wordFor` for the words.
 *
 * @param families [in] the shop's catalogue, sizes as made; may be empty
 * @param readings [in] readings that stand, each above 0
 * @param model [in] the measurement model; left out, the one of the seed table
 * @returns candidates by probability [1], none of these [1], readings too far apart [in]
 * Validity: rocker arms measured off the engine with a caliper; marks play no part, since no mark proves a ratio.
 * Source: derived here; figures of the model are common practice, no published source.
 */
export function rank(
  families: readonly Family[],
  readings: PartReadings,
  model: IdentificationModel = IDENTIFICATION_MODEL,
): Ranking {
  const p = familyChances(families, readings, model);
  const candidates = families.map((family, index) => ({
    id: family.id,
    probability: p[index] ?? 0,
    reasons: reasonsFor(model, family, readings),
  }));
  return {
    candidates: candidates.sort((a, b) => b.probability - a.probability),
    noneOfThese: p[families.length] ?? 1,
    apart: apartIn(model, readings),
  };
}

/**
 * The ranking with what each further measurement is worth.
 *
 * Equation: see `rank` and `nextMeasurements`.
 *
 * @param families [in] as for `rank`
 * @param readings [in] as for `rank`
 * @param model [in] as for `rank`
 * @returns what `rank` answers, and offers [bit], the one that settles most first
 * Validity: as for `rank`.
 * Source: derived here.
 */
export function identify(
  families: readonly Family[],
  readings: PartReadings,
  model: IdentificationModel = IDENTIFICATION_MODEL,
): Identification {
  const accounts = accountsOf(model, families);
  const believed = beliefs(model, accounts, readings);
  return {
    ...rank(families, readings, model),
    offers: nextMeasurements(model, accounts, believed, readings),
  };
}
