import { EQUAL } from '../../kit/nearest.ts';
import { lashLogOf } from '../common/newest-lash.ts';
import { placeOf } from '../common/said.ts';
import type { Evidence, ValvePlace } from '../evidence.ts';

const isSame = (a: number, b: number): boolean => Math.abs(a - b) <= EQUAL;

/** Shims that went in at a valve since its first one was logged, and those that came out of it. */
function movedAt(place: ValvePlace, evidence: Evidence): { readonly in?: number; readonly out: number[] } {
  const shims = lashLogOf(evidence, place).flatMap(({ shim }) => shim ?? []);
  const now = shims.at(-1);
  const out = shims.filter((each) => now !== undefined && !isSame(each, now));
  return now === undefined || out.length === 0 ? { out: [] } : { in: now, out };
}

/**
 * The stock less what went into the engine since: one in stock is one piece. A shim that came out of another valve may
 * be what went in, and then the one in stock is still there.
 *
 * @param stock [m] as it was told, each once for each piece
 * @param places the valves of the log
 */
export function stockLeft(
  stock: readonly number[],
  places: readonly ValvePlace[],
  evidence: Evidence,
): readonly number[] {
  const moved = places.map((place) => ({ name: placeOf(place), ...movedAt(place, evidence) }));
  const left = [...stock];
  const free = moved.flatMap(({ name, out }) => out.map((shim) => ({ name, shim })));
  for (const { name, in: went } of moved) {
    if (went === undefined) continue;
    const other = free.findIndex((each) => each.name !== name && isSame(each.shim, went));
    if (other >= 0) {
      free.splice(other, 1);
      continue;
    }
    const piece = left.findIndex((each) => isSame(each, went));
    if (piece >= 0) left.splice(piece, 1);
  }
  return left;
}
