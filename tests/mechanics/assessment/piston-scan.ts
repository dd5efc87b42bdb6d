import type { ScanEvidence } from '../../../server/mechanics/assessment/evidence.ts';
import { sideOfValve } from '../../../shared/schemas/words.ts';
import { type GapAt, pointsOf, scanEvidence } from './scan-evidence.ts';

/** The gap over the piston of cylinder 1, `least` inches at 9°: after TDC of an intake, before it of an exhaust. */
export function scanOf(id: string, least: number, more: Partial<ScanEvidence> = {}): ScanEvidence {
  const way = sideOfValve(more.valve ?? 'intake') === 'intake' ? 1 : -1;
  const gaps = [0, 2, 4, 6, 8, 10, 12, 14, 16, 18].map(
    (at): GapAt => [way * at, least + 0.0005 * (at - 9) ** 2],
  );
  const points = pointsOf(gaps, () => 'a gap');
  return scanEvidence(points, { id, line: 100, ...more });
}
