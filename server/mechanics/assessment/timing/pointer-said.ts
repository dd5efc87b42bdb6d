import type { StopEvidence } from '../evidence.ts';
import { degrees } from './readings.ts';

/**
 * What is done with a pointer that is out. No direction is told: it would have to say of the wheel or of the block, and
 * what both sides read in the end leaves no doubt.
 */
export const shiftSaid = ({ correction, trueReading }: StopEvidence): string =>
  `shift the pointer ${degrees(correction)}°, until it reads ${degrees(trueReading)}° on both sides`;
