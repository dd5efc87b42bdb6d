import { isHydraulicLifter } from '../../../../shared/lifters.ts';
import { EQUAL } from '../../kit/nearest.ts';
import type { KeptSet } from '../common/kept.ts';
import { isLashDoubted } from '../common/lash-doubt.ts';
import { byPlace, inches, placeOf } from '../common/said.ts';
import type { TurnsEvidence } from '../evidence/kept-sums.ts';
import type { Evidence, LashEvidence } from '../evidence.ts';

/** A gap of the log, by the gauges it lies between. */
interface Gap {
  readonly line: LashEvidence;
  /** The gap, or the least that it can be: turns are held to that. */
  readonly gap: number;
  /** The most that it can be; of one that no gauge was too thick for there is no end. */
  readonly most: number;
}

/** Turns of a solid adjuster that close more than any gap that the log has: nothing gives way to the rest. */
export interface PastGap {
  readonly closes: number;
  /** How far the valve would be held open at the most. */
  readonly past: number;
  /** They close more than the gap can be, and not only more than it may be. */
  readonly isSure: boolean;
  readonly widest: Gap;
}

/** The gap of each valve in the log whose least is widest: whichever the turns go from, that much there may have been. */
function gapsOf(evidence: Evidence): Gap[] {
  const widest = new Map<string, Gap>();
  for (const line of evidence.lash.filter((each) => each.standing).toSorted(byPlace)) {
    const gap = line.gap.value ?? line.gap.low ?? 0;
    const most = line.gap.value ?? line.gap.high ?? Number.POSITIVE_INFINITY;
    const before = widest.get(placeOf(line));
    if (!isLashDoubted(evidence, line) && (before === undefined || gap > before.gap))
      widest.set(placeOf(line), { line, gap, most });
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
  const widest = others.reduce((held, each) => (each.gap > held.gap ? each : held), first);
  const isSure = [first, ...others].every(({ most }) => closes > most + EQUAL);
  return closes > widest.gap + EQUAL ? { closes, past: closes - widest.gap, isSure, widest } : undefined;
}

/** `.068 in more than the .026 in of 1 intake`; between two gauges more than the least that it may be. */
export const pastGapSaid = ({ past, widest, isSure }: PastGap): string => {
  const at = placeOf(widest.line);
  if (widest.gap <= EQUAL) return isSure ? `and ${at} has no gap` : `and ${at} may have no gap`;
  return isSure
    ? `${inches(past)} more than the ${inches(widest.gap)} of ${at}`
    : `${inches(past)} more than the ${inches(widest.gap)} that ${at} has at the least`;
};

/** Valves whose gap these turns would close, where those of others are wide enough; nothing where the log has no gap. */
export function shutBy({ set }: KeptSet<TurnsEvidence>, evidence: Evidence): LashEvidence[] | undefined {
  const closes = closing(set) ?? 0;
  const gaps = gapsOf(evidence);
  return gaps.length === 0
    ? undefined
    : gaps.filter(({ gap }) => closes > gap + EQUAL).map(({ line }) => line);
}
