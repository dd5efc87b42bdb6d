import type {
  Bounds,
  LashEvidence,
  TurnsEvidence,
  WorkingEvidence,
} from '../../../../server/mechanics/assessment/evidence.ts';
import { IN } from '../../../../server/mechanics/kit/si.ts';

/** A gap of the lash log, in inches as it was said; everything else as it mostly is. */
export function gapOf(line: number, gap: Bounds, more: Partial<LashEvidence> = {}): LashEvidence {
  const inches = Object.entries(gap).map(([name, value]) => [name, value * IN]);
  return {
    ...{ id: `lash-${line}`, line, standing: true, cylinder: 1, valve: 'intake', readAs: 'as read' },
    gap: Object.fromEntries(inches),
    ...{ moment: 'found', engine: 'cold', nut: 'held', day: '2026-03-14' },
    ...more,
  };
}

const THREAD = {
  thread: '7/16-20 UNF',
  pitch: 0.05 * IN,
  size: '7/16',
  mount: 'stud-nut',
  ratio: 1.5,
} as const;

/** Turns of an adjuster that were kept. */
export const turnsOf = (
  line: number,
  set: Omit<TurnsEvidence, 'of' | 'thread' | 'pitch' | 'size' | 'mount' | 'ratio'>,
): WorkingEvidence => ({
  id: `turns-${line}`,
  line,
  computation: 'adjuster',
  set: { of: 'turns', ...THREAD, ...set },
});
