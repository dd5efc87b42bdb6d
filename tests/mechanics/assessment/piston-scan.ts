import type { ScanEvidence } from '../../../server/mechanics/assessment/evidence.ts';
import { DEG, IN } from '../../../server/mechanics/kit/si.ts';
import { sideOfValve } from '../../../shared/schemas/words.ts';

/** The gap over the piston of cylinder 1, `least` inches at 9°: after TDC of an intake, before it of an exhaust. */
export const scanOf = (id: string, least: number, more: Partial<ScanEvidence> = {}): ScanEvidence => ({
  id,
  line: 100,
  standing: true,
  cylinder: 1,
  valve: 'intake',
  points: [0, 2, 4, 6, 8, 10, 12, 14, 16, 18].map((at) => ({
    crankAngle: (sideOfValve(more.valve ?? 'intake') === 'intake' ? at : -at) * DEG,
    gap: { value: (least + 0.0005 * (at - 9) ** 2) * IN },
    readAs: 'a gap',
  })),
  readAs: 'a scan',
  tool: 'indicator',
  spring: 'light',
  lifter: 'solid',
  lash: 'zero',
  arms: 'these',
  ...more,
});
