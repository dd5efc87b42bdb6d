import { type InputFault, InputFaults, impossible } from '../../../shared/problems/faults.ts';
import { type Combined, combine } from '../uncertainty/combine.ts';
import { rectangular } from '../uncertainty/type-b.ts';

/** A length between two centres, and how far off it can be. */
interface ArmLength {
  readonly value: number;
  readonly errorLimit: number;
}

/** From here on a first-order interval reaches to a ratio of nothing. */
const TOO_WIDE = 0.5;

/** Refuses an error limit that leaves hardly anything of its length, each at its own place. */
function refuseWideLimits(arms: readonly (readonly [field: string, arm: ArmLength])[]): void {
  const faults = arms
    .filter(([, { value, errorLimit }]) => errorLimit >= TOO_WIDE * value)
    .map(
      ([field]): InputFault => ({
        pointer: `/${field}/errorLimit`,
        code: 'impossible-input',
        detail: 'is half the length or more: no ratio can be taken from that',
      }),
    );
  if (faults.length > 0) throw new InputFaults(faults);
}

/**
 * Ratio of a rocker's two arms with its uncertainty.
 *
 * Equation: R = T/C; u_R² = (u_T/C)² + (R·u_C/C)², u = errorLimit/√3 each
 *
 * @param pivotToTip [m] pivot centre to tip centre, above zero, with its error limit
 * @param pivotToCup [m] pivot centre to the centre of the pushrod's ball in its cup, likewise
 * @returns ratio [1] and what was combined [1]
 * @throws impossible-input when an error limit is half its length or more
 * @throws impossible-input when the ratio comes out above 100
 *
 * Validity: errors small against the lengths; the two are read independently of each other.
 * Source: JCGM 100:2008, 4.3.7 and 5.1.2.
 */
export function armRatio(
  pivotToTip: ArmLength,
  pivotToCup: ArmLength,
): { readonly ratio: number; readonly combined: Combined } {
  refuseWideLimits([
    ['pivotToTip', pivotToTip],
    ['pivotToCup', pivotToCup],
  ]);
  const cup = pivotToCup.value;
  const ratio = pivotToTip.value / cup;
  if (ratio > 100) impossible(['/pivotToTip/value', '/pivotToCup/value'], 'give a ratio above 100');
  const combined = combine([
    { source: 'pivot to tip', u: rectangular(pivotToTip.errorLimit), sensitivity: 1 / cup },
    { source: 'pivot to cup', u: rectangular(pivotToCup.errorLimit), sensitivity: -ratio / cup },
  ]);
  return { ratio, combined };
}
