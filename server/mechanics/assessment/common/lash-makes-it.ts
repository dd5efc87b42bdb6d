import { IN } from '../../kit/si.ts';

/** A lift is short by the lash that was left in it within this [m]: common practice, no published source. */
const FITS = 0.003 * IN;

/** Whether a lift that is short by so much is short by just that lash. */
export const lashMakesIt = (short: number, lash: number): boolean =>
  Math.abs(short - lash) <= FITS + 1e-9 * IN;
