import { EQUAL } from '../kit/nearest.ts';
import { combine } from '../uncertainty/combine.ts';
import { rectangular } from '../uncertainty/type-b.ts';
import { SAME_INDICATOR } from './ratio-budget.ts';

/** How a deflection stands to what is usual; `none` where there is nothing to set against it. */
export const AGAINST_USUAL = ['usual', 'more', 'less', 'none'] as const;
type AgainstUsual = (typeof AGAINST_USUAL)[number];

/**
 * Half-width of the 95 % interval of the difference of two lifts that one indicator read.
 *
 * Equation: u² = 2·u_a² − 2·r·u_a², u_a = errorLimit/√3, r = .5: u = u_a; U = 1.96·u
 *
 * @param errorLimit [m] how far off either reading can be, half-width
 * @returns U [m]
 *
 * Validity: one indicator, moved by nobody between the two.
 * Source: JCGM 100:2008, 4.3.7 and 5.2.2; r is judgement, no published source.
 */
export function differenceWithin(errorLimit: number): number {
  const u = rectangular(errorLimit);
  return combine(
    [
      { source: 'light lift', u, sensitivity: 1 },
      { source: 'running lift', u, sensitivity: -1 },
    ],
    [{ first: 0, second: 1, coefficient: SAME_INDICATOR }],
  ).expanded;
}

/**
 * Sets what a running spring takes off the lift against what is usual.
 *
 * Equation: `less` when d + U < from, `more` when d − U > to, else `usual`; `none` below zero
 *
 * @param deflection [m] light lift less running lift
 * @param half [m] half-width U of its 95 % interval
 * @param usual [m] the usual band
 *
 * Validity: no spring adds lift. A running lift above the light one is no deflection, small or large: within its
 * uncertainty nothing was seen, beyond it the two readings are not what they say.
 * Source: a verdict by interval, JCGM 106:2012, 8.2, in plain words (from memory).
 */
export function againstUsual(
  deflection: number,
  half: number,
  usual: { readonly from: number; readonly to: number },
): AgainstUsual {
  if (deflection < -EQUAL) return 'none';
  if (deflection + half < usual.from - EQUAL) return 'less';
  if (deflection - half > usual.to + EQUAL) return 'more';
  return 'usual';
}
