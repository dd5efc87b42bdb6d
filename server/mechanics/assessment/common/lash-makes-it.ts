import { allowance } from '../../kit/allowances.ts';
import { EQUAL } from '../../kit/nearest.ts';

/** Whether a lift that is short by so much is short by just that lash. */
export const lashMakesIt = (short: number, lash: number): boolean =>
  Math.abs(short - lash) <= allowance('lash-left-in') + EQUAL;
