import type { StopEvidence } from '../evidence.ts';
import { degrees, isPointerOut } from './readings.ts';

/** What the wheel reads with a pointer that is out, in words that tell one way from the other. */
export const wheelSaid = (off: number): string =>
  isPointerOut(off) ? `${degrees(off)}° too ${off > 0 ? 'much' : 'little'} after TDC` : 'right at TDC';

/**
 * What is done with a pointer that is out: by what it reads on the one side and is to read there, which says the way on
 * every wheel, whichever side its numbers run.
 */
export const shiftSaid = ({ correction, trueReading }: StopEvidence): string =>
  `shift the pointer ${degrees(correction)}°, held against the stop after TDC from ${degrees(trueReading + correction)}° to ${degrees(trueReading)}°, until it reads ${degrees(trueReading)}° on both sides`;
