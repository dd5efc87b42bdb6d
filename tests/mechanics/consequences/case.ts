import type { ConsequenceInput, LimitFigure } from '../../../server/mechanics/consequences/types.ts';
import { defaultLimit, limitSource } from '../../../server/mechanics/kit/limits.ts';
import { DEG, IN, LBF, LBF_PER_IN } from '../../../server/mechanics/kit/si.ts';
import type { GapKind } from '../../../shared/schemas/sheet.ts';

const limit = (name: Parameters<typeof defaultLimit>[0]): LimitFigure => ({
  value: defaultLimit(name),
  source: limitSource(name),
});

export const LIMITS: Readonly<Record<GapKind, LimitFigure>> = {
  'coil-bind': limit('coil-bind'),
  'retainer-to-seal': limit('retainer-to-seal'),
  'piston-to-valve': limit('piston-to-valve-intake'),
  'pushrod-to-head': limit('pushrod-to-head'),
  'slot-to-stud': limit('slot-to-stud'),
  'rocker-to-retainer': limit('rocker-to-retainer'),
  cover: limit('cover'),
};

/**
 * An engine made of handbook figures: crank 3.48 by 5.70 in, valve at 23 degrees and a lobe of 280 degrees as in the
 * sweep test of the check values; springs as in their worked loads.
 */
export const CASE: ConsequenceInput = {
  side: 'intake',
  before: { value: 1.5, halfWidth: 0.03 },
  after: { value: 1.6, halfWidth: 0.006, spring: 'light' },
  lobeLift: 0.3125 * IN,
  lash: 0,
  lifter: 'solid',
  mounting: 'stud',
  spring: {
    installedHeight: 1.9 * IN,
    seatLoad: 130 * LBF,
    rate: 350 * LBF_PER_IN,
    solidHeight: 1.15 * IN,
    retainerToSeal: 0.65 * IN,
  },
  crank: { stroke: 3.48 * IN, rodLength: 5.7 * IN, valveAngle: 23 * DEG },
  lobe: { centreline: 106 * DEG, durations: [{ atLift: 0, duration: 280 * DEG }] },
  closedGapAtTdc: 0.42 * IN,
  pistonFloor: 'pocket',
  pushrodToHead: 0.09 * IN,
  pivotToTip: 1.48 * IN,
  readBefore: {},
  limits: LIMITS,
};
