import { isHydraulicLifter } from '../../../../shared/lifters.ts';
import { EQUAL } from '../../kit/nearest.ts';
import { isLashDoubted } from '../common/lash-doubt.ts';
import { byPlace, inches, placeOf } from '../common/said.ts';
import type { Evidence, LashEvidence } from '../evidence.ts';
import type { TurnsEvidence } from './evidence.ts';
import type { KeptSet } from './kept.ts';

/** The gap that turns are held to: the least that the log leaves possible. */
interface Gap {
  readonly line: LashEvidence;
  readonly gap: number;
}

/** Turns of a solid adjuster that close more than any gap that the log has: nothing gives way to the rest. */
export interface PastGap {
  readonly closes: number;
  /** How far the valve would be held open. */
  readonly past: number;
  readonly widest: Gap;
}

/** The widest gap of each valve in the log: whichever the turns go from, none of that valve was wider. */
function gapsOf(evidence: Evidence): Gap[] {
  const widest = new Map<string, Gap>();
  for (const line of evidence.lash.filter((each) => each.standing).toSorted(byPlace)) {
    const gap = line.gap.value ?? line.gap.low ?? 0;
    const before = widest.get(placeOf(line));
    if (!isLashDoubted(evidence, line) && (before === undefined || gap > before.gap))
      widest.set(placeOf(line), { line, gap });
  }
  return [...widest.values()];
}

/** What counted turns of a solid adjuster close; nothing where they open, or go from one gap to another. */
function closing({ lifter, lashFound, lashChange = 0 }: TurnsEvidence): number | undefined {
  return lifter === 'solid' && lashFound === undefined && lashChange < -EQUAL ? -lashChange : undefined;
}

/** Turns past every gap of the log; of which valve they are nobody said, so the widest is held against them. */
export function pastGap({ set }: KeptSet<TurnsEvidence>, evidence: Evidence): PastGap | undefined {
  const closes = closing(set);
  const [first, ...others] = gapsOf(evidence);
  const { gear, lifter } = evidence.engine;
  if (closes === undefined || first === undefined || gear === 'bucket' || isHydraulicLifter(lifter))
    return undefined;
  const widest = others.reduce((most, each) => (each.gap > most.gap ? each : most), first);
  return closes > widest.gap + EQUAL ? { closes, past: closes - widest.gap, widest } : undefined;
}

/** `.068 in more than the .026 in of 1 intake` */
export const pastGapSaid = ({ past, widest }: PastGap): string =>
  widest.gap <= EQUAL
    ? `and ${placeOf(widest.line)} has no gap`
    : `${inches(past)} more than the ${inches(widest.gap)} of ${placeOf(widest.line)}`;

/** Valves whose gap these turns would close, where those of others are wide enough; nothing where the log has no gap. */
export function shutBy({ set }: KeptSet<TurnsEvidence>, evidence: Evidence): LashEvidence[] | undefined {
  const closes = closing(set) ?? 0;
  const gaps = gapsOf(evidence);
  return gaps.length === 0
    ? undefined
    : gaps.filter(({ gap }) => closes > gap + EQUAL).map(({ line }) => line);
}
