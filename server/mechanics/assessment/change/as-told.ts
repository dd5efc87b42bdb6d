import { defined } from '../../../../shared/defined.ts';
import { IN } from '../../kit/si.ts';
import type { GapBounds } from '../common/gap-said.ts';

/** Gaps are told to the thousandth. */
const STEP = 0.001 * IN;

/** The last bits of the arithmetic go first: .060 is not .059 and something. */
const steps = (si: number): number => Number((si / STEP).toPrecision(9));

const rounded = (si: number | undefined, way: (count: number) => number): number | undefined =>
  si === undefined ? undefined : way(steps(si)) * STEP || 0;

/**
 * A calculated gap as it is told: its ends go outward to the thousandth. The word is given to these figures, so that
 * it follows from the figures beside it.
 */
export const asTold = ({ value, low, high }: GapBounds): GapBounds =>
  defined({
    value: rounded(value, Math.round),
    low: rounded(low, Math.floor),
    high: rounded(high, Math.ceil),
  });
