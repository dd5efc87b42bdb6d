import type { ValveRatio } from '../../../server/mechanics/assessment/common/valve-ratio.ts';
import { IN } from '../../../server/mechanics/kit/si.ts';

/** 1.600 read on 1 intake on the light spring, over a lobe of .375 in. */
export const RATIO: ValveRatio = {
  cylinder: 1,
  valve: 'intake',
  setUpId: 's1',
  value: 1.6,
  low: 1.6,
  high: 1.6,
  spring: 'light',
  basis: 'measured',
  lashIn: 'none',
  lobeLift: 0.375 * IN,
  lacks: [],
  restsOn: ['pass-1'],
};

/** The arm that it was read of: 1.6 in from pivot to tip. */
export const ARM = { rockers: { soldAs: 1.6, pivotToTip: 1.6 * IN } };
