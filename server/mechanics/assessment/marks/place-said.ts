import { inches } from '../common/said.ts';
import type { TipMarkEvidence } from '../evidence.ts';

interface PlaceOf {
  readonly follower: boolean;
  /** It is near the edge of a stem that nobody measured: that it is centred was only told. */
  readonly stemOpen?: boolean;
}

/** Where a mark sits, as far as that was told. */
export function placeSaid(
  { side, off }: Pick<TipMarkEvidence, 'side' | 'off'>,
  { follower, stemOpen }: PlaceOf,
): string {
  if (side === 'centred') return stemOpen === true ? 'told as in the middle' : 'centred';
  const by = off === undefined ? '' : `${inches(off)} `;
  if (side === 'sideways') return `${by}off sideways`;
  if (follower) return `${by}${side === 'valley' ? 'toward' : 'away from'} the pivot`;
  return `${by}toward the ${side === 'valley' ? 'valley' : 'exhaust side'}`;
}
