import { allowance } from '../kit/allowances.ts';
import type { ArmOnValve } from './swap-test.ts';

/** So many of the four readings of a swap, and the fourth follows. */
const THREE = 3;

/** Three of the four readings of a swap with the fourth as the others have it, and what was read twice. */
export interface OfThree {
  readonly all: readonly ArmOnValve[];
  /** The arm that was read on both valves, and the valve that was read with both arms. */
  readonly arm: string;
  readonly place: string;
}

/**
 * The fourth reading of a swap as the three that were read have it, where arm and valve each make their own difference.
 *
 * Equation: B on Q = B on P + A on Q − A on P; its ± such that the swap’s part and position, which are then the
 * differences A on P − B on P and A on P − A on Q, carry the errors of two readings: √(5/3) of the three together
 *
 * @param read [m] three readings of two arms on two valves
 * @returns nothing unless one arm was read on both valves and one valve with both arms
 *
 * Validity: as the swap test; nothing shows whether the difference would show again on the fourth.
 * Source: the additive model of the swap test (swap-test.ts), derived here.
 */
export function withFourth(read: readonly ArmOnValve[]): OfThree | undefined {
  const corner = read.find(
    (each) =>
      read.some((other) => other.arm === each.arm && other.place !== each.place) &&
      read.some((other) => other.arm !== each.arm && other.place === each.place),
  );
  if (read.length !== THREE || corner === undefined) return undefined;
  const moved = read.find(({ arm, place }) => arm === corner.arm && place !== corner.place);
  const other = read.find(({ arm, place }) => arm !== corner.arm && place === corner.place);
  if (moved === undefined || other === undefined) return undefined;
  const together = Math.hypot(...read.map(({ half }) => half ?? allowance('repeat')));
  const fourth: ArmOnValve = {
    arm: other.arm,
    place: moved.place,
    lift: other.lift + moved.lift - corner.lift,
    half: together * Math.sqrt(5 / THREE),
    placeHalf: moved.placeHalf ?? 0,
  };
  return { all: [...read, fourth], arm: corner.arm, place: corner.place };
}
