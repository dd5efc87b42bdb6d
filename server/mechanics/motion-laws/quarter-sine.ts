import type { MotionState } from './law.ts';
import { angleLessSine } from './sine-less.ts';

/** Both modified laws begin with a quarter sine wave of acceleration over an eighth of the flank. */
export const EIGHTH = 1 / 8;

const FAST = 4 * Math.PI;

/**
 * The first eighth of the flank of a modified law, where the acceleration rises to its peak as a quarter sine.
 *
 * Equation: a = C·sin 4πu; v = C·(1 − cos 4πu)/4π; s = C·(4πu − sin 4πu)/16π²; j = 4πC·cos 4πu
 *
 * @param peak [1] the peak acceleration C
 * @param u [1] share of the flank, 0 to ⅛
 *
 * Validity: 0 ≤ u ≤ ⅛.
 * Source: derived here, by integrating the acceleration twice from rest.
 */
export function quarterSine(peak: number, u: number): MotionState {
  return {
    s: (peak * angleLessSine(FAST * u)) / FAST ** 2,
    v: (2 * peak * Math.sin((FAST * u) / 2) ** 2) / FAST,
    a: peak * Math.sin(FAST * u),
    j: peak * FAST * Math.cos(FAST * u),
  };
}
