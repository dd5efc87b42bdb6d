import { nearest, within } from './compare.ts';
import { expectedLifts, idsOf, isOrdinary, lobeInUse, valveLift } from './lifts.ts';
import type { Tolerances } from './tolerances.ts';
import type { Question, QuestionInput } from './types.ts';
import { changeText } from './words.ts';

const TURNS_OF_SMALL_HAND = 10;

/** What the lift would be with the big hand turned round, and with the small hand turned round too. */
function turnedRound(lift: number, turn: number, t: Tolerances): number[] {
  // With the hand near zero a thousandth decides which turn it is, so both are tried.
  const wholes = [-t.passSpread, t.passSpread].map((off) => Math.floor((lift + off) / turn) * turn);
  const big = wholes.map((whole) => 2 * whole + turn - lift);
  const both = TURNS_OF_SMALL_HAND * turn - lift;
  const hasTenTurns = within(turn - t.usualTurn, 1e-6);
  return [...big, ...(hasTenTurns ? [both] : [])].filter((value) => value > 0);
}

/** Row 21: 5 turns and 18, or 4 and 18, was 5 and 82. */
export function handReadBackwards(input: QuestionInput, tolerances: Tolerances): Question[] {
  const lift = valveLift(input);
  const expected = expectedLifts(input);
  if (lift === undefined || expected.length === 0 || isOrdinary(input, tolerances, lift)) return [];
  const misses = (value: number) => Math.abs(value - (nearest(value, expected) ?? value));
  const best = turnedRound(lift, input.perTurn, tolerances).sort((a, b) => misses(a) - misses(b))[0];
  if (best === undefined || !within(misses(best), tolerances.mirrorFits)) return [];
  // A lifter that sinks reads low by itself: that goes before the hand.
  const maySink = input.lifter === 'hydraulic' && best > lift;
  return [
    {
      code: 'hand-read-backwards',
      weight: !maySink && within(misses(best), tolerances.mirrorFitsStrongly) ? 'strong' : 'weak',
      ask: 'Could the hand have been read backwards?',
      size: changeText(lift, best, lobeInUse(input)),
      test: 'Say which way the big hand runs as the valve opens, then take one more pass.',
      restsOn: idsOf(input.valvePasses),
    },
  ];
}
