import { mistakesKey } from './accounts.ts';
import type { Belief } from './belief.ts';
import { keyOf } from './mistake-sets.ts';
import type { Cause, Entry } from './types.ts';

/** One mistake with its chance, alone or together with another, over all names. */
interface SingleMistake {
  readonly cause: Cause;
  readonly entry?: Entry;
  readonly probability: number;
  /** Index of the heaviest hypothesis that has it, which speaks for it. */
  readonly representative: number;
}

interface Tally {
  readonly cause: Cause;
  readonly entry: Entry | undefined;
  sum: number;
  heaviest: number;
  representative: number;
}

function count(tallies: Map<string, Tally>, key: string, one: Tally): void {
  const known = tallies.get(key);
  if (known === undefined) {
    tallies.set(key, one);
    return;
  }
  known.sum += one.sum;
  if (one.heaviest > known.heaviest) {
    known.heaviest = one.heaviest;
    known.representative = one.representative;
  }
}

/** The chance of each single mistake, likeliest first. */
export function gatherMistakes(belief: Belief, weights: Float64Array): SingleMistake[] {
  const tallies = new Map<string, Tally>();
  for (const i of belief.alive) {
    const h = belief.hypotheses[i];
    const weight = weights[i] ?? 0;
    if (h === undefined || weight === 0) continue;
    const start = { sum: weight, heaviest: weight, representative: i };
    if (h.name < 0) count(tallies, mistakesKey(h), { cause: 'ratio-not-listed', entry: undefined, ...start });
    for (const m of h.set.mistakes) count(tallies, keyOf(m), { cause: m.cause, entry: m.entry, ...start });
  }
  return [...tallies.values()]
    .map(({ cause, entry, sum, representative }) => ({
      cause,
      ...(entry === undefined ? {} : { entry }),
      probability: sum,
      representative,
    }))
    .sort((one, other) => other.probability - one.probability);
}
