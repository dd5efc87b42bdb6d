import { defined } from '../../../shared/defined.ts';
import { computation as lobeProfile } from '../computations/lobe-profile.ts';
import { computation as pistonToValve } from '../computations/piston-to-valve.ts';
import { allowance } from '../kit/allowances.ts';
import { type Calculated, type GapCalculation, known, lacking, together } from './gap-calculation.ts';
import { changeByScan, type LobeAt, type ScanMoved, scanMoved } from './scan-gap.ts';
import type { ConsequenceInput, RatioFigure } from './types.ts';

type SweepInput = Parameters<typeof pistonToValve.compute>[0];
type Sweep = ReturnType<typeof pistonToValve.compute>;

function needsOf({ crank, lobe, lobeLift, pistonFloor }: ConsequenceInput): string[] {
  return lacking({
    'lobe lift': lobeLift,
    stroke: crank.stroke,
    'rod length': crank.rodLength,
    'valve angle': crank.valveAngle,
    'pocket or flat piston': pistonFloor,
    'lobe centreline': lobe.centreline,
    'a duration of the cam card': lobe.durations?.[0],
  });
}

function profileOf({ lobe, lobeLift }: ConsequenceInput) {
  return {
    lobeLift: known(lobeLift, 'lobe lift'),
    centreline: known(lobe.centreline, 'centreline'),
    durations: known(lobe.durations, 'durations').map((each) => ({ ...each })),
  };
}

/** The gap through the crank sweep, at no lash: the choice that leaves the least room. */
function pistonSweep(input: ConsequenceInput, ratio: number, closedGapAtTdc: number, advance = 0): Sweep {
  const { crank } = input;
  const given: SweepInput = {
    stroke: known(crank.stroke, 'stroke'),
    rodLength: known(crank.rodLength, 'rod length'),
    ...defined({ pinOffset: crank.pinOffset }),
    valveAngle: known(crank.valveAngle, 'valve angle'),
    floor: known(input.pistonFloor, 'piston floor'),
    closedGapAtTdc,
    side: input.side,
    profile: profileOf(input),
    ratio,
    advance,
  };
  return pistonToValve.compute(given);
}

/** Lift of the lobe where the gap is least: by so much a change of ratio counts there. */
function lobeAt(input: ConsequenceInput, crankAngle: number): number {
  const { lifts } = lobeProfile.compute({ ...profileOf(input), side: input.side, crankAngles: [crankAngle] });
  return lifts[0] ?? 0;
}

/** The card's lobe over the crank, where the card gives one. */
function lobeOver(input: ConsequenceInput): LobeAt | undefined {
  const { lobe, lobeLift } = input;
  if (lobeLift === undefined || lobe.centreline === undefined || lobe.durations === undefined)
    return undefined;
  const profile = { ...profileOf(input), side: input.side };
  return (crankAngles) => lobeProfile.compute({ ...profile, crankAngles: [...crankAngles] }).lifts;
}

/** Where the scan with the arms before would have its least with the ratio after; undefined without scan or card. */
export function movedScan(input: ConsequenceInput): ScanMoved | undefined {
  const { scanBefore, before, after } = input;
  const lobe = lobeOver(input);
  if (scanBefore === undefined || lobe === undefined || before === undefined || after === undefined)
    return undefined;
  return scanMoved(scanBefore, before.value, after.value, lobe);
}

/** What the gap loses when the cam stands off its card by the allowance, the way that costs this side. */
function timingLoss(input: ConsequenceInput, ratio: number, closed: number, gap: number): number {
  const off = allowance('cam-timing') * (input.side === 'intake' ? 1 : -1);
  return Math.max(0, gap - pistonSweep(input, ratio, closed, off).margin);
}

/** Valve and piston where they come closest, for a drawing of it. SI. */
export interface Closest {
  readonly lift: number;
  readonly gap: number;
  /** After top dead centre; before it where negative. */
  readonly crankAngle: number;
}

/** Where they come closest with the ratio after; undefined where that is not calculated from a closed gap. */
export function closestOf(input: ConsequenceInput): Closest | undefined {
  const { after, closedGapAtTdc } = input;
  if (after === undefined || closedGapAtTdc === undefined || needsOf(input).length > 0) return undefined;
  const { margin, atCrankAngle } = pistonSweep(input, after.value, closedGapAtTdc);
  return { lift: lobeAt(input, atCrankAngle) * after.value, gap: margin, crankAngle: atCrankAngle };
}

/**
 * What another ratio takes from a gap that was read, by the lobe's lift where it is least.
 *
 * Equation: change = −l·(r₂ − r₁), half-width = l·√(U₉₅(r₁)² + U₉₅(r₂)²); with l not known it lies between none and all
 * of the lobe lift: −L·(r₂ − r₁)/2 ± L·|r₂ − r₁|/2, L for l in the rest; so it does with l for L, where l is doubted and
 * the ratio is lower
 *
 * Validity: the gap was read where it is least, and the place does not move with the ratio; at no lash.
 * Source: common practice, no published source: piston to valve less lobe at that angle times the change of ratio.
 */
function changeByLobe(input: ConsequenceInput, before: RatioFigure, after: RatioFigure): Calculated {
  const by = after.value - before.value;
  const ofRatios = together(before.halfWidth, after.halfWidth);
  const there = input.lobeLiftAtClosest;
  if (there !== undefined && input.closestDoubted === true && by < 0)
    return { value: (-there * by) / 2, halfWidth: (there * Math.abs(by)) / 2 + there * ofRatios };
  if (there !== undefined) return { value: -there * by, halfWidth: there * ofRatios };
  const most = known(input.lobeLift, 'lobe lift');
  return { value: (-most * by) / 2, halfWidth: (most * Math.abs(by)) / 2 + most * ofRatios };
}

/**
 * Piston to valve through the crank sweep for a ratio.
 *
 * Equation: as `piston-to-valve`; half-width = √((l(θ)·U₉₅(r))² + closed gap² + timing²), l(θ) the lobe lift where the
 * gap is least
 *
 * Validity: the lobe between the card's durations is a model; the allowance for timing covers its position only.
 */
export function pistonGap(input: ConsequenceInput): GapCalculation {
  const missing = needsOf(input);
  const byLobe = input.lobeLiftAtClosest !== undefined || missing.length > 0;
  return {
    missing: [...lacking({ 'closed valve to piston at TDC': input.closedGapAtTdc }), ...missing],
    gap(ratio) {
      const closed = known(input.closedGapAtTdc, 'closed gap');
      const { margin, atCrankAngle } = pistonSweep(input, ratio.value, closed);
      const halfWidth = together(
        lobeAt(input, atCrankAngle) * ratio.halfWidth,
        allowance('closed-gap'),
        timingLoss(input, ratio.value, closed, margin),
      );
      return { value: margin, halfWidth };
    },
    missingForChange: lacking({ 'lobe lift': input.lobeLiftAtClosest ?? input.lobeLift }),
    change(before: RatioFigure, after: RatioFigure) {
      const lobeCurve = input.scanBefore === undefined ? undefined : lobeOver(input);
      if (input.scanBefore !== undefined && lobeCurve !== undefined)
        return changeByScan(input.scanBefore, before, after, lobeCurve);
      if (byLobe) return changeByLobe(input, before, after);
      // Where the gap is least does not hang on the closed gap, and it drops out of the difference.
      const one = pistonSweep(input, before.value, 0);
      const two = pistonSweep(input, after.value, 0);
      const lobe = lobeAt(input, two.atCrankAngle);
      return {
        value: two.margin - one.margin,
        halfWidth: lobe * together(before.halfWidth, after.halfWidth),
      };
    },
  };
}
