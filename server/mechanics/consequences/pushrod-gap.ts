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

/** The ratio of the arms that it was read with. */
function readWith({
  pushrodToHeadWith = 'before',
  before,
  after,
}: ConsequenceInput): RatioFigure | undefined {
  if (pushrodToHeadWith === 'before') return before;
  return pushrodToHeadWith === 'after' ? after : pushrodToHeadWith;
}

/** Pushrod in the slot of the head: what was read, less the move of the cup where it was read with other arms. */
export function pushrodGap(input: ConsequenceInput): GapCalculation {
  const { pushrodToHead, pivotToTip } = input;
  const from = readWith(input);
  const missingForChange = lacking({ 'pivot to tip': pivotToTip });
  const change = (one: RatioFigure, two: RatioFigure): Calculated => {
    const move = cupMove(known(pivotToTip, 'pivot to tip'), one, two);
    return { value: -move.value, halfWidth: move.halfWidth };
  };
  const isOfAfter = input.pushrodToHeadWith === 'after';
  return {
    missing: [
      ...lacking({
        ...(isOfAfter ? { 'a ratio to calculate with': from } : { 'ratio the card assumes': from }),
        'the same gap with the arms before': pushrodToHead,
      }),
      ...(isOfAfter ? [] : missingForChange),
    ],
    gap(ratio) {
      const one = known(from, 'ratio it was read with');
      const read = known(pushrodToHead, 'pushrod to head');
      if (ratio === one) return { value: read, halfWidth: allowance('closed-gap'), asRead: true };
      const moved = change(one, ratio);
      return { value: read + moved.value, halfWidth: together(moved.halfWidth, allowance('closed-gap')) };
    },
    missingForChange,
    change,
  };
}
