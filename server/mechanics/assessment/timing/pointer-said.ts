import type { StopEvidence } from '../evidence.ts';
import { degrees, isPointerOut } from './readings.ts';

/** What the wheel reads with a pointer that is out, in words that tell one way from the other. */
export const wheelSaid = (off: number): string =>
  isPointerOut(off) ? `${degrees(off)}° too ${off > 0 ? 'much' : 'little'} after TDC` : 'right at TDC';

/**
 * What is done with a pointer that is out. No direction is told: it would have to say of the wheel or of the block, and
 * what both sides read in the end leaves no doubt.
 */
export const shiftSaid = ({ correction, trueReading }: StopEvidence): string =>
  `shift the pointer ${degrees(correction)}°, until it reads ${degrees(trueReading)}° on both sides`;
