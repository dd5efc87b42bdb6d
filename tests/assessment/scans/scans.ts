import type { Evidence, ScanEvidence } from '../../../server/mechanics/assessment/evidence.ts';
import { IN } from '../../../server/mechanics/kit/si.ts';
import { PLAIN } from '../../mechanics/assessment/plain-build.ts';
import { type GapAt, pointsOf, scanEvidence } from '../../mechanics/assessment/scan-evidence.ts';

/* Gap curves of an invented engine: least + .0004 × (angle − 9)² in, about 9° after top dead centre. */

export const curve = (least: number, from = 0, to = 20, step = 2): GapAt[] =>
  Array.from({ length: (to - from) / step + 1 }, (_, index) => from + step * index).map((angle) => [
    angle,
    Number((least + 0.0004 * (angle - 9) ** 2).toFixed(4)),
  ]);

let line = 0;
export function scan(pairs: readonly GapAt[], more: Partial<ScanEvidence> = {}): ScanEvidence {
  line += 1;
  return scanEvidence(pointsOf(pairs), { id: `scan-${line}`, line, ...more });
}

export const scanned = (scans: readonly ScanEvidence[], more: Partial<Evidence> = {}): Evidence => ({
  ...PLAIN,
  call: { ...PLAIN.call, goal: 'clearances-after-a-change' },
  card: { assumedRatio: 1.5, intake: { lobeLift: 0.34 * IN }, exhaust: {} },
  springs: {},
  rockers: {},
  scans,
  ...more,
});
