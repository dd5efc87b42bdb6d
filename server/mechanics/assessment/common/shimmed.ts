import { isHydraulicLifter } from '../../../../shared/lifters.ts';
import type { Evidence } from '../evidence.ts';

/**
 * Whether a shim sets the gap: always that of a bucket; that of a solid finger follower where a shim is on record, over the
 * stem, as others have a screw at their pivot.
 *
 * Source: how each valve gear is made, general knowledge from memory, no published source.
 */
export function hasShims({ engine, lash }: Pick<Evidence, 'engine' | 'lash'>): boolean {
  if (engine.gear === 'bucket') return true;
  if (engine.gear !== 'finger-follower' || isHydraulicLifter(engine.lifter)) return false;
  return (
    (engine.shimStock ?? []).length > 0 || lash.some(({ standing, shim }) => standing && shim !== undefined)
  );
}
