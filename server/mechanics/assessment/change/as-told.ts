import { defined } from '../../../../shared/defined.ts';
import { spokenUnits } from '../../../../shared/quantities/spoken-units.ts';
import { IN, MM } from '../../kit/si.ts';
import type { GapBounds } from '../common/gap-said.ts';

/** Gaps are told to the thousandth. */
const STEP = 0.001 * IN;

/** In millimetres to a hundredth: .87 rounded to thousandths of an inch first would be told as .86. */
const FINER = 0.01 * MM;

/** The last bits of the arithmetic go first: .060 is not .059 and something. */
const steps = (si: number, step: number): number => Number((si / step).toPrecision(9));

const rounded = (si: number | undefined, way: (count: number) => number, step = STEP): number | undefined =>
  si === undefined ? undefined : way(steps(si, step)) * step || 0;

/**
 * A calculated gap as it is told: its ends go outward to the thousandth. The word is given to these figures, so that
 * it follows from the figures beside it.
 */
export const asTold = ({ value, low, high }: GapBounds): GapBounds =>
  defined({
    // The word is given to the ends, so that the units change none.
    value: rounded(value, Math.round, spokenUnits() === 'metric' ? FINER : STEP),
    low: rounded(low, Math.floor),
    high: rounded(high, Math.ceil),
  });
