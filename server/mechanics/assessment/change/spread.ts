import type { ConsequenceInput, RatioFigure } from '../../consequences/types.ts';
import { usualDeflection } from '../../kit/allowances.ts';
import type { Evidence } from '../evidence.ts';
import type { ChangeRatio } from './detail.ts';
import type { BeforeAndAfter } from './ratios.ts';

/**
 * The same inputs with the ratios at their best values and at the ends of their intervals. An interval need not be even
 * about its value, so that each end is calculated by itself and not as a half-width.
 */
export interface Variants {
  readonly middle: ConsequenceInput;
  /** The ratio before by itself: at its best value, and at the ends of its interval. */
  readonly beforeAlone: ConsequenceInput;
  readonly beforeEnds: readonly ConsequenceInput[];
  readonly before: readonly ConsequenceInput[];
  readonly after: readonly ConsequenceInput[];
}

/** By how much each of the two ratios is raised for what the train bends. */
export interface Bends {
  readonly before: number;
  readonly after: number;
}

export const UNBENT: Bends = { before: 0, after: 0 };

const exact = (value: number, { lashIn }: ChangeRatio): RatioFigure => ({ value, halfWidth: 0, lashIn });

/**
 * What a running-spring ratio may be short of the light one: gaps take no credit for what the train bends, so the upper
 * end is raised by the most that a spring usually takes on that mounting.
 */
export function bendOf(
  ratio: ChangeRatio | undefined,
  lobeLift: number | undefined,
  evidence: Evidence,
): number {
  if (ratio?.spring !== 'running' || lobeLift === undefined || lobeLift <= 0) return 0;
  return usualDeflection(evidence.engine.mounting).to / lobeLift;
}

export function variantsOf(
  known: Omit<ConsequenceInput, 'before' | 'after'>,
  { before, after }: BeforeAndAfter,
  bend: Bends,
): Variants {
  const at = (one: number | undefined, two: number | undefined): ConsequenceInput => ({
    ...known,
    ...(before === undefined || one === undefined ? {} : { before: exact(one, before) }),
    ...(after === undefined || two === undefined
      ? {}
      : { after: { ...exact(two, after), spring: after.spring ?? 'light' } }),
  });
  const alone = (value: number | undefined): ConsequenceInput => ({
    ...known,
    ...(before === undefined || value === undefined ? {} : { before: exact(value, before) }),
  });
  const ofBefore = before === undefined ? [] : [before.low, before.high + bend.before];
  return {
    beforeAlone: alone(before?.value),
    beforeEnds: ofBefore.map(alone),
    middle: at(before?.value, after?.value),
    before: ofBefore.map((value) => at(value, after?.value)),
    after:
      after === undefined
        ? []
        : [after.low, after.high + bend.after].map((value) => at(before?.value, value)),
  };
}

/** What the ends of the ratios make of a figure. */
export interface Ends {
  readonly before: readonly (number | undefined)[];
  readonly after: readonly (number | undefined)[];
}

const far = (ends: readonly (number | undefined)[], off: (end: number) => number): number =>
  Math.max(0, ...ends.flatMap((end) => (end === undefined ? [] : [off(end)])));

/** How far under and over the middle the ends of the ratios and everything else bring it, as independent errors. */
export function spreadOf(
  middle: number,
  ends: Ends,
  other: { readonly under: number; readonly over: number },
): { readonly under: number; readonly over: number } {
  const down = (end: number) => middle - end;
  const up = (end: number) => end - middle;
  return {
    under: Math.hypot(other.under, far(ends.before, down), far(ends.after, down)),
    over: Math.hypot(other.over, far(ends.before, up), far(ends.after, up)),
  };
}
