import { InputFaults } from '../../../shared/problems/faults.ts';
import type { RatioFigure } from './types.ts';

/** A calculated figure with the half-width of its interval, in SI. */
export interface Calculated {
  readonly value: number;
  readonly halfWidth: number;
  /** It is what was read, with nothing taken off or put on. */
  readonly asRead?: boolean;
}

/** How one gap follows from a ratio, and what that takes. */
export interface GapCalculation {
  /** Which part the gap is of, where it is one of two: of the inner spring. */
  readonly of?: string;
  /** Inputs lacking for the gap itself. */
  readonly missing: readonly string[];
  /** Only when nothing is missing. */
  gap(ratio: RatioFigure): Calculated;
  /** Inputs lacking for the change alone; fewer, since what is the same before and after drops out. */
  readonly missingForChange: readonly string[];
  /** After less before; only when nothing is missing for it. */
  change(before: RatioFigure, after: RatioFigure): Calculated;
}

/** Half-widths of independent errors together. */
export const together = (...halfWidths: number[]): number => Math.hypot(...halfWidths);

/** The names of those that are not known. */
export function lacking(needs: Readonly<Record<string, unknown>>): string[] {
  return Object.entries(needs)
    .filter(([, value]) => value === undefined)
    .map(([name]) => name);
}

/** A figure, or the sentence that says why these inputs give none. */
export function attempt<T>(
  work: () => T,
): { readonly ok: true; readonly value: T } | { readonly ok: false; readonly why: string } {
  try {
    return { ok: true, value: work() };
  } catch (error) {
    if (error instanceof InputFaults)
      return {
        ok: false,
        why: [...new Set(error.faults.map(({ detail }) => detail))].join('; '),
      };
    throw error;
  }
}

/** For a calculation that is only asked once all its inputs are there. */
export function known<T>(value: T | undefined, name: string): T {
  if (value === undefined) throw new RangeError(`${name} is not known`);
  return value;
}
