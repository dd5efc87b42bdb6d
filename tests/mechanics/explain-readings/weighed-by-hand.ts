import { type Belief, priorBelief } from '../../../server/mechanics/explain-readings/belief.ts';
import { type Case, openCase } from '../../../server/mechanics/explain-readings/case.ts';
import { enumerateHypotheses } from '../../../server/mechanics/explain-readings/hypotheses.ts';
import { mistakesPossible } from '../../../server/mechanics/explain-readings/mistakes.ts';
import { SIZE } from '../../../server/mechanics/explain-readings/reading-model.ts';
import type { ExplainInput } from '../../../server/mechanics/explain-readings/types.ts';

/** A belief whose weights and sizes a test puts in itself, so that what is made of them is known by hand. */
export interface ByHand {
  readonly given: Case;
  readonly belief: Belief;
  readonly weights: Float64Array;
  /** Index of the account with this name (-1: not listed) and these mistakes. */
  readonly at: (name: number, key?: string) => number;
  /** Gives it a weight. */
  readonly weigh: (weight: number, name: number, key?: string) => void;
  /** Puts a size into its state. */
  readonly put: (index: number, place: number, value: number) => void;
}

export function byHand(input: ExplainInput): ByHand {
  const given = openCase(input);
  const hypotheses = enumerateHypotheses(given, mistakesPossible(given));
  const belief = priorBelief(given, hypotheses);
  const weights = new Float64Array(hypotheses.length);
  const at = (name: number, key = '') => {
    const index = hypotheses.findIndex((h) => h.name === name && h.set.key === key);
    if (index < 0) throw new Error(`no account ${name} ${key}`);
    return index;
  };
  return {
    given,
    belief,
    weights,
    at,
    weigh: (weight, name, key) => {
      weights[at(name, key)] = weight;
    },
    put: (index, place, value) => {
      belief.means[index * SIZE + place] = value;
    },
  };
}
