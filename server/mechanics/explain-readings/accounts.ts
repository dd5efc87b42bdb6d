import type { Belief } from './belief.ts';
import type { Hypothesis } from './hypotheses.ts';
import { RATIO, SIZE } from './reading-model.ts';
import type { Cause } from './types.ts';

/** Hypotheses that say the same in words: one name, the same mistakes, the same entry. */
export interface Account {
  /** Index of the name; -1 for a ratio not listed. */
  readonly name: number;
  readonly causes: readonly Cause[];
  readonly probability: number;
  /** Mean ratio over the hypotheses in it. */
  readonly ratio: number;
  /** Index of its heaviest hypothesis, which speaks for it. */
  readonly representative: number;
}

/** The mistakes of a hypothesis as a key; the same mistake about another entry is another one. */
export function mistakesKey(h: Hypothesis): string {
  return h.name < 0 ? 'ratio-not-listed' : h.set.key;
}

/** The causes of a hypothesis in the output's words. */
export function causesOf(h: Hypothesis): Cause[] {
  return h.name < 0 ? ['ratio-not-listed'] : h.set.mistakes.map((m) => m.cause);
}

/** Gathers the hypotheses into accounts, likeliest first. */
export function gatherAccounts(
  belief: Belief,
  weights: Float64Array,
  key: (h: Hypothesis) => string,
): Account[] {
  const found = new Map<
    string,
    { sum: number; ratioSum: number; representative: number; heaviest: number }
  >();
  for (const i of belief.alive) {
    const h = belief.hypotheses[i];
    if (h === undefined) continue;
    const weight = weights[i] ?? 0;
    const ratio = belief.means[i * SIZE + RATIO] ?? 0;
    const name = key(h);
    const known = found.get(name);
    if (known === undefined) {
      found.set(name, { sum: weight, ratioSum: weight * ratio, representative: i, heaviest: weight });
      continue;
    }
    known.sum += weight;
    known.ratioSum += weight * ratio;
    if (weight > known.heaviest) {
      known.heaviest = weight;
      known.representative = i;
    }
  }
  return [...found.values()]
    .filter(({ sum }) => sum > 0)
    .map(({ sum, ratioSum, representative }) => {
      const h = belief.hypotheses[representative];
      return {
        name: h?.name ?? -1,
        causes: h === undefined ? [] : causesOf(h),
        probability: sum,
        ratio: ratioSum / sum,
        representative,
      };
    })
    .sort((one, other) => other.probability - one.probability);
}
