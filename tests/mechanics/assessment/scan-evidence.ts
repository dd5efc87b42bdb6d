import type { ScanEvidence } from '../../../server/mechanics/assessment/evidence.ts';
import { DEG, IN } from '../../../server/mechanics/kit/si.ts';

/** Degrees of the crank after top dead centre, and the gap there in inches. */
export type GapAt = readonly [angle: number, gap: number];

const asTyped = (inches: number): string => `${inches} in`;
export const toThousandths = (inches: number): string => `${inches.toFixed(3)} in`;

export const pointsOf = (pairs: readonly GapAt[], readAs = asTyped): ScanEvidence['points'] =>
  pairs.map(([angle, gap]) => ({
    crankAngle: angle * DEG,
    gap: { value: gap * IN },
    readAs: readAs(gap),
  }));

/** A scan of 1 intake with nothing wrong: by an indicator, on a light spring, at zero lash. */
export const scanEvidence = (
  points: ScanEvidence['points'],
  more: Partial<ScanEvidence> = {},
): ScanEvidence => ({
  id: 'scan',
  line: 1,
  standing: true,
  cylinder: 1,
  valve: 'intake',
  points,
  readAs: 'a scan',
  tool: 'indicator',
  spring: 'light',
  lifter: 'solid',
  lash: 'zero',
  arms: 'these',
  ...more,
});
