import { MM } from '../../kit/si.ts';
import { lashLogOf } from '../common/lash-log-of.ts';
import { placeOf } from '../common/said.ts';
import type { Evidence, LashEvidence } from '../evidence.ts';

/** A shim measured again is the same one this near: its mark has hundredths, a micrometer reads to half of one [m]. */
const SAME = 0.01 * MM + 1e-9;

/** Setting a gap takes another shim: what was in before is not what is in now. */
export function fittedIn(lines: readonly LashEvidence[]): number | undefined {
  const newest = lines.at(-1);
  if (newest?.shim !== undefined || newest?.moment === 'set') return newest.shim;
  const last = lines.findLast(({ shim, moment }) => shim !== undefined || moment === 'set');
  return last?.shim;
}

/** What was in before anything was set. */
function firstIn(lines: readonly LashEvidence[]): number | undefined {
  const set = lines.findIndex(({ moment }) => moment === 'set');
  return (set < 0 ? lines : lines.slice(0, set)).findLast(({ shim }) => shim !== undefined)?.shim;
}

/** `from` without one of its nearest for each of `taken`; what is not there takes nothing. */
function without(from: readonly number[], taken: readonly number[]): number[] {
  const left = [...from];
  for (const each of taken.toSorted((a, b) => a - b)) {
    const [nearest] = left.toSorted((a, b) => Math.abs(a - each) - Math.abs(b - each) || a - b);
    if (nearest !== undefined && Math.abs(nearest - each) <= SAME) left.splice(left.indexOf(nearest), 1);
  }
  return left;
}

/**
 * The stock that is still there: each shim in it is one piece, and what is in a valve now and was in none before came
 * out of it. One that moved from valve to valve takes nothing.
 *
 * @param evidence everything on the record, in SI; the stock as it was before anything was fitted
 * @returns [m] what can still be given
 *
 * Validity: buckets with shims; a shim whose thickness is not said takes nothing.
 * Source: derived here; one piece goes in once.
 */
export function stockLeft(evidence: Evidence): number[] {
  const places = new Map(
    evidence.lash.filter(({ standing }) => standing).map((line) => [placeOf(line), line]),
  );
  const logs = [...places.values()].map((line) => lashLogOf(evidence, line));
  const before = logs.flatMap((lines) => firstIn(lines) ?? []);
  const now = logs.flatMap((lines) => fittedIn(lines) ?? []);
  return without(evidence.engine.shimStock ?? [], without(now, before));
}
