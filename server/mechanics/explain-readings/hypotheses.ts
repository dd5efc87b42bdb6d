import type { Case } from './case.ts';
import { type MistakeSet, mistakeSets } from './mistake-sets.ts';
import type { Mistake } from './mistakes.ts';

/** One account of the readings: a ratio and a set of mistakes, with its weight before any reading. */
export interface Hypothesis {
  /** Index into the names; -1 for a ratio that is not listed. */
  readonly name: number;
  readonly ratioMean: number;
  readonly ratioSpread: number;
  /** Shared by all names. */
  readonly set: MistakeSet;
  readonly logWeight: number;
}

/** Chance of each name before any reading: equal, or mostly the mark's. */
function nameChances(given: Case): number[] {
  const count = given.nominals.length;
  const { mark } = given.input;
  if (mark === undefined || count === 1) return given.nominals.map(() => 1 / count);
  const { markTrue } = given.assumed;
  return given.nominals.map((name) => (name === mark ? markTrue : (1 - markTrue) / (count - 1)));
}

/**
 * All accounts of the readings that are weighed against each other: every name with every set of
 * mistakes, weight P(name) times the odds of its mistakes (the product of 1 - p is common to all), and
 * one for a ratio that is not listed.
 */
export function enumerateHypotheses(given: Case, possible: readonly Mistake[]): Hypothesis[] {
  const a = given.assumed;
  const sets = mistakeSets(given, possible);
  const all: Hypothesis[] = [];
  nameChances(given).forEach((chance, name) => {
    const ratioMean = given.nominals[name] ?? 0;
    const ratioSpread = a.ratioSpread * ratioMean;
    const logName = Math.log(chance);
    for (const set of sets) {
      all.push({ name, ratioMean, ratioSpread, set, logWeight: logName + set.logOdds });
    }
  });
  const [none] = sets;
  if (none === undefined) return all;
  const logWeight = Math.log(a.ratioNotListed / (1 - a.ratioNotListed));
  all.push({ name: -1, ratioMean: a.notListedMean, ratioSpread: a.notListedSpread, set: none, logWeight });
  return all;
}
