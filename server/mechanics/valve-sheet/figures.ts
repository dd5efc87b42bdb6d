import { allowance } from '../kit/allowances.ts';

/** What several readings of one thing come to, in SI: a mean of figures, or the bounds all gauges agree on. */
export interface SheetFigure {
  readonly value?: number;
  readonly low?: number;
  readonly high?: number;
  readonly passes: number;
  /** Largest less smallest of the passes. */
  readonly spread?: number;
}

interface Pass {
  readonly value?: number;
  readonly low?: number;
  readonly high?: number;
}

/**
 * Passes of one thing together. Figures alone are averaged; as soon as one is a pair of bounds, the bounds are
 * narrowed by each other and by nothing else: the middle of two gauges is no reading.
 *
 * @param passes [m] in the order of entry
 * @param averaged [1] false where passes sink: then the last one stands
 */
export function together(passes: readonly Pass[], averaged: boolean): SheetFigure | undefined {
  const last = passes.at(-1);
  if (last === undefined) return undefined;
  const bounds = passes.filter((pass) => pass.value === undefined);
  if (bounds.length > 0) return narrowed(bounds);
  const values = passes.flatMap(({ value }) => (value === undefined ? [] : [value]));
  const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
  return {
    value: averaged ? mean : (last.value ?? mean),
    passes: values.length,
    ...(values.length > 1 ? { spread: Math.max(...values) - Math.min(...values) } : {}),
  };
}

/** Bounds that contradict each other leave all that either allows: the person settles which of them is right. */
function narrowed(bounds: readonly Pass[]): SheetFigure {
  const lows = bounds.flatMap(({ low }) => (low === undefined ? [] : [low]));
  const highs = bounds.flatMap(({ high }) => (high === undefined ? [] : [high]));
  const [low, high] = [Math.max(...lows), Math.min(...highs)];
  const ends = low < high ? { low, high } : { low: Math.min(...lows), high: Math.max(...highs) };
  return {
    ...(Number.isFinite(ends.low) ? { low: ends.low } : {}),
    ...(Number.isFinite(ends.high) ? { high: ends.high } : {}),
    passes: bounds.length,
  };
}

interface RatioOfLifts {
  readonly value?: number;
  readonly low?: number;
  readonly high?: number;
}

/** How far off each of the two lifts may be, as 95 % half-widths [m]; left out, as such readings repeat. */
interface LiftHalves {
  readonly valve: number;
  readonly lobe: number;
}

/**
 * Ratio of two figures of the sheet as an interval.
 *
 * Equation: r = V/L, half-width r·√((u/V)² + (u/L)²) with the u of each lift's own tool, .002 in for an indicator; of
 * bounds, low = V_low/L_high and high = V_high/L_low
 *
 * Source: trade practice, .002 in on each lift gives about .011 of ratio; interval arithmetic.
 */
export function ratioOfFigures(
  valve: SheetFigure,
  lobe: SheetFigure,
  halves: LiftHalves = { valve: allowance('repeat'), lobe: allowance('repeat') },
): RatioOfLifts {
  if (valve.value !== undefined && lobe.value !== undefined) {
    const value = valve.value / lobe.value;
    const half = value * Math.hypot(halves.valve / valve.value, halves.lobe / lobe.value);
    return { value, low: value - half, high: value + half };
  }
  const ends = (figure: SheetFigure, half: number) =>
    figure.value === undefined ? figure : { low: figure.value - half, high: figure.value + half };
  const [v, l] = [ends(valve, halves.valve), ends(lobe, halves.lobe)];
  return {
    ...(v.low === undefined || l.high === undefined ? {} : { low: v.low / l.high }),
    ...(v.high === undefined || l.low === undefined || l.low <= 0 ? {} : { high: v.high / l.low }),
  };
}
