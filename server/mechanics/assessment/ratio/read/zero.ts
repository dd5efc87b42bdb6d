import { IN } from '../../../kit/si.ts';
import type { PassEvidence } from '../../evidence.ts';

/** A hand that comes back within this is on its zero: common practice, no published source. */
export const ZERO_RETURNS_WITHIN = 0.002 * IN;

/** Last bits of the arithmetic [m]. */
const EQUAL = 1e-9;

/** The hand was looked at after the pass, and was not on its zero. */
export const zeroOff = ({ zeroReturn }: PassEvidence): boolean =>
  zeroReturn !== undefined && Math.abs(zeroReturn) > ZERO_RETURNS_WITHIN + EQUAL;

/**
 * How far the mean of passes may be off because their zero did not come back [m]: when it moved is not known, so that
 * each lift lies between what was read and what it is from the zero after it. No answer takes that off the record.
 */
export function zeroLeft(passes: readonly PassEvidence[]): number {
  const off = passes.map((pass) => (zeroOff(pass) ? Math.abs(pass.zeroReturn ?? 0) : 0));
  return off.length === 0 ? 0 : off.reduce((sum, each) => sum + each, 0) / off.length;
}
