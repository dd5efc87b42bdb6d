import { allowance } from '../kit/allowances.ts';
import { type Calculated, type GapCalculation, known, lacking, together } from './gap-calculation.ts';
import type { ConsequenceInput, RatioFigure } from './types.ts';

/**
 * How far the pushrod's cup moves toward the stud when another ratio goes on the same valve.
 *
 * Equation: move = b·(1/r₁ − 1/r₂), b pivot to tip; half-width from b's allowance and both ratios' intervals
 *
 * Validity: pivot, tip and cup in line, the tip staying on the same valve.
 * Source: derived here; trade practice gives .062 in for a 1.48 in arm from 1.5 to 1.6.
 */
export function cupMove(pivotToTip: number, before: RatioFigure, after: RatioFigure): Calculated {
  const perRatio = 1 / before.value - 1 / after.value;
  return {
    value: pivotToTip * perRatio,
    halfWidth: together(
      allowance('arm-length') * perRatio,
      (pivotToTip / before.value ** 2) * before.halfWidth,
      (pivotToTip / after.value ** 2) * after.halfWidth,
    ),
  };
}

/** Pushrod in the slot of the head: what was read with the arms before, less the move of the cup. */
export function pushrodGap(input: ConsequenceInput): GapCalculation {
  const { pushrodToHead, pivotToTip, before } = input;
  const missingForChange = lacking({ 'pivot to tip': pivotToTip });
  const change = (from: RatioFigure, to: RatioFigure): Calculated => {
    const move = cupMove(known(pivotToTip, 'pivot to tip'), from, to);
    return { value: -move.value, halfWidth: move.halfWidth };
  };
  return {
    missing: [
      ...lacking({ 'ratio the card assumes': before, 'the same gap with the arms before': pushrodToHead }),
      ...missingForChange,
    ],
    gap(ratio) {
      const from = known(before, 'ratio before');
      const read = known(pushrodToHead, 'pushrod to head');
      if (ratio === from) return { value: read, halfWidth: allowance('closed-gap') };
      const moved = change(from, ratio);
      return { value: read + moved.value, halfWidth: together(moved.halfWidth, allowance('closed-gap')) };
    },
    missingForChange,
    change,
  };
}
