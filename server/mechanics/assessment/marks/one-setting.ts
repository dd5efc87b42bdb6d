import { ONE_LENGTH } from '../../tip-mark/next-length.ts';
import type { TipMarkEvidence } from '../evidence.ts';

const isAt = (a: number | undefined, b: number | undefined): boolean =>
  a === undefined || b === undefined ? a === b : Math.abs(a - b) < ONE_LENGTH;

/** Made with the same length and on the same shims, as far as either was told. */
export const isOneSetting = (a: TipMarkEvidence, b: TipMarkEvidence): boolean =>
  isAt(a.pushrod, b.pushrod) && isAt(a.shims, b.shims);
