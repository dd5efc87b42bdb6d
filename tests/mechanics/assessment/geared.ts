import type { Evidence } from '../../../server/mechanics/assessment/evidence.ts';
import type { ValveGear } from '../../../shared/schemas/words.ts';
import { PLAIN } from './plain-build.ts';

export const MM = 0.001;
/** A four with solid lifters, of that gear. */
export const geared = (gear: ValveGear, more: Partial<Evidence> = {}): Evidence => ({
  ...PLAIN,
  engine: { cylinders: 4, lifter: 'solid-flat', gear },
  ...more,
});
