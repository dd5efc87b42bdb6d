import { defined } from '../../../../shared/defined.ts';
import type { ReadSize } from '../../identify/types.ts';
import { IN } from '../../kit/si.ts';
import type { PartEvidence } from '../evidence.ts';

/** Finer than any size is written; coarser than what the way to metres and back leaves behind. */
const DIGITS = 1e9;
export const toInches = (si: number): number => Math.round((si / IN) * DIGITS) / DIGITS;

/** A reading as the ranking takes it. */
export const asReadSize = ({
  size,
  tool,
  typedWithin,
}: Pick<PartEvidence, 'tool' | 'typedWithin'> & { readonly size: number }): ReadSize => ({
  value: toInches(size),
  ...defined({ tool, within: typedWithin === undefined ? undefined : toInches(typedWithin) }),
});
