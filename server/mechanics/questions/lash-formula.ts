import { within } from './compare.ts';
import { lashKnown, liftsOf, lobeLifts, ratioExpected } from './lifts.ts';
import type { Tolerances } from './tolerances.ts';
import type { Question, QuestionInput } from './types.ts';
import { inch } from './words.ts';

interface Sum {
  readonly name: string;
  readonly lift: number;
  /** The ratio that it was calculated with. */
  readonly ratio: number;
}

function sumsOf(input: QuestionInput, t: Tolerances, expected: number): Sum[] {
  const named = (name: string, lift: number | undefined, ratio = expected) =>
    lift === undefined ? [] : [{ name, lift, ratio }];
  const stated = input.statedValveLift;
  // A number that a pass gave was read, not calculated.
  const wasRead =
    stated !== undefined && liftsOf(input.valvePasses).some((lift) => within(lift - stated, t.statedOff));
  const own = wasRead ? undefined : stated;
  return [
    ...named('lift in the sum', own),
    ...named('valve lift on the card', input.cardValveLift, input.cardRatio),
  ];
}

function lobesFor(input: QuestionInput): number[] {
  const stated = input.statedLobeLift;
  return stated === undefined ? lobeLifts(input) : [...lobeLifts(input), stated];
}

/** Row 11: the lash was taken off the lobe instead of off the lift at the valve. */
export function lashFormula(input: QuestionInput, tolerances: Tolerances): Question[] {
  const lash = lashKnown(input);
  const expected = ratioExpected(input);
  if (lash === undefined || expected === undefined) return [];
  return sumsOf(input, tolerances, expected).flatMap((sum) => {
    const { ratio } = sum;
    const wrong = (lobe: number) => Math.abs((lobe - lash) * ratio - sum.lift);
    const right = (lobe: number) =>
      Math.min(...[lash, 0].map((off) => Math.abs(lobe * ratio - off - sum.lift)));
    const lobe = lobesFor(input).sort((a, b) => wrong(a) - wrong(b))[0];
    if (lobe === undefined || !within(wrong(lobe), tolerances.formulaFits)) return [];
    if (right(lobe) <= wrong(lobe)) return [];
    return [
      {
        code: 'lash-formula',
        weight: within(wrong(lobe), tolerances.formulaFitsStrongly) ? 'strong' : 'weak',
        ask: `Could the lash be taken off the lobe in the ${sum.name}, ${inch(sum.lift)}?`,
        size: `Taken off at the valve it makes ${inch(lobe * ratio - lash)}.`,
        test: 'Calculate again: lobe lift times ratio, then less the lash.',
        restsOn: [],
      },
    ];
  });
}
