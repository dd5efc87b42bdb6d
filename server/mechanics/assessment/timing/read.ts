import { DEGREE } from '../../setting-order/timing.ts';
import type { Evidence, PeakEvidence, Side, StopEvidence } from '../evidence.ts';

/** A wheel is not read finer than this: common practice. */
export const READ = 0.25 * DEGREE;
/** What a wheel is good to, either way: common practice, no published source. */
export const WITHIN = 1 * DEGREE;
/** Where lobes peak, either side of top dead centre (common practice, no published source). */
export const USUAL_PEAK = { from: 95 * DEGREE, to: 120 * DEGREE } as const;
/** Two lobes of one cam that stand further apart than this are asked about; a wheel is good to a degree each. */
export const APART = 2 * DEGREE;

export type Lined<T> = T & { readonly line: number };

/** `3.25`, `102.75` */
export const degrees = (radians: number): string =>
  String(Number(Math.abs(radians / DEGREE).toFixed(2))).replace(/^0\./, '.');

const byLine = (a: { readonly line: number }, b: { readonly line: number }): number => a.line - b.line;

/** The centreline that was kept last of each side, and the readings at the stop that were. */
export function readOf({ workings }: Evidence) {
  const lined = workings.toSorted(byLine);
  const peaks = lined.flatMap(({ line, timing }): Lined<PeakEvidence>[] =>
    timing?.of === 'peak' ? [{ ...timing, line }] : [],
  );
  const stops = lined.flatMap(({ line, timing }): Lined<StopEvidence>[] =>
    timing?.of === 'stop' ? [{ ...timing, line }] : [],
  );
  const sides: readonly Side[] = ['intake', 'exhaust'];
  return {
    stop: stops.at(-1),
    stops,
    all: peaks,
    peaks: sides.flatMap((side) => peaks.findLast((peak) => peak.side === side) ?? []),
  };
}

/** The pointer stood out at the stop when it was read last, and nothing was taken off for it. */
export const isOut = (peak: PeakEvidence, { correction }: StopEvidence): boolean =>
  Math.abs(correction) >= READ && !peak.righted;

/**
 * The pointer was out at the stop, was set since, and the peak was kept before that: it was read with the pointer as it
 * stood then.
 */
export const isOfOldPointer = (peak: Lined<PeakEvidence>, stops: readonly Lined<StopEvidence>[]): boolean => {
  const last = stops.at(-1);
  return (
    last !== undefined &&
    !isOut(peak, last) &&
    peak.line < last.line &&
    stops.some((stop) => stop.line < last.line && isOut(peak, stop))
  );
};
