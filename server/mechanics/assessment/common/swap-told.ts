import type { ValvePlace } from '../evidence.ts';
import { placeOf } from './said.ts';

/** What a swap of two arms between two valves decided. */
export interface SwapTold {
  readonly verdict: string;
  readonly arms: readonly [string, string];
  readonly places: readonly [string, string];
  readonly oddArm?: string;
  readonly oddPlace?: string;
}

/**
 * What a swap says of one arm on one valve: it is this arm, or this valve; the other of the two; or one of the two
 * without a word which.
 */
export interface ToldOfArm {
  readonly verdict: 'part' | 'position' | 'both';
  readonly odd: 'own' | 'other' | 'one-of-two';
}

const DECIDED = ['part', 'position', 'both'] as const;

/** The word of a swap that decided; nothing where it cannot be told. */
export const decidedOf = ({ verdict }: SwapTold): ToldOfArm['verdict'] | undefined =>
  DECIDED.find((each) => each === verdict);

export const swapsOfArm = (
  swaps: readonly SwapTold[],
  arm: ValvePlace & { readonly armId?: string },
): SwapTold[] =>
  swaps.filter(
    ({ arms, places }) =>
      arm.armId !== undefined && arms.includes(arm.armId) && places.includes(placeOf(arm)),
  );

const oddOf = (odd: string | undefined, own: string): ToldOfArm['odd'] =>
  odd === undefined ? 'one-of-two' : odd === own ? 'own' : 'other';

/** Of several swaps the one that names this arm or this valve goes first. */
export function toldOfArm(
  swaps: readonly SwapTold[],
  arm: ValvePlace & { readonly armId?: string },
): ToldOfArm | undefined {
  const told = swapsOfArm(swaps, arm).flatMap((swap): ToldOfArm[] => {
    const verdict = decidedOf(swap);
    if (verdict === undefined) return [];
    const odd =
      verdict === 'position' ? oddOf(swap.oddPlace, placeOf(arm)) : oddOf(swap.oddArm, arm.armId ?? '');
    return [{ verdict, odd }];
  });
  return told.find(({ odd }) => odd === 'own') ?? told[0];
}
