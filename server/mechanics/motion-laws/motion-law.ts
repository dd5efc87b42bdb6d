import { cycloidal } from './cycloidal.ts';
import type { MotionLaw } from './law.ts';
import { modifiedSine } from './modified-sine.ts';
import { modifiedTrapezoid } from './modified-trapezoid.ts';
import { parabolic } from './parabolic.ts';
import { polynomial345, polynomial4567 } from './polynomials.ts';
import { simpleHarmonic } from './simple-harmonic.ts';

export type { MotionLaw, MotionState } from './law.ts';

/** The laws by the names that requests use. */
export const MOTION_LAWS = [
  'parabolic',
  'shm',
  'cycloidal',
  'modified-trapezoid',
  'modified-sine',
  '3-4-5',
  '4-5-6-7',
] as const;

type MotionLawName = (typeof MOTION_LAWS)[number];

const LAWS: Record<MotionLawName, MotionLaw> = {
  parabolic,
  shm: simpleHarmonic,
  cycloidal,
  'modified-trapezoid': modifiedTrapezoid,
  'modified-sine': modifiedSine,
  '3-4-5': polynomial345,
  '4-5-6-7': polynomial4567,
};

/** The law of that name: `motionLaw('shm').at(u)` is `{ s, v, a, j }` per unit of lift and of flank. */
export const motionLaw = (name: MotionLawName): MotionLaw => LAWS[name];
