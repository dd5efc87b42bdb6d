import { outWord } from '../../../shared/schemas/outputs.ts';

type NominalVerdict = 'agrees' | 'differs' | 'cannot-tell';

interface JudgedNominal {
  readonly ratio: number;
  readonly verdict: NominalVerdict;
}

/** A nominal that was judged by two lifts, with the valve lift that it needs on this lobe. */
interface NominalWithLift extends JudgedNominal {
  readonly needsValveLift: number;
}

/** The words of a verdict on a nominal, for the output of a computation. */
export const nominalVerdict = outWord(
  ['agrees', 'differs', 'cannot-tell'],
  'alone inside the interval, outside it, or inside with another',
);

/**
 * Sets nominal ratios against the interval of a measured one.
 *
 * @param nominals [1] nominal ratios, above zero
 * @param interval [1] low and high end of the 95 % interval
 * @returns each nominal's verdict: `agrees` alone inside the interval, `cannot-tell` inside with another,
 * `differs` outside
 *
 * Validity: a nominal listed twice counts once; the interval's ends count as inside.
 * Source: a verdict by interval, JCGM 106:2012, 8.2, in plain words (from memory).
 */
export function judgeByInterval(
  nominals: readonly number[],
  [low, high]: readonly [number, number],
): JudgedNominal[] {
  const inside = new Set(nominals.filter((nominal) => nominal >= low && nominal <= high));
  const verdictOf = (nominal: number): NominalVerdict => {
    if (!inside.has(nominal)) return 'differs';
    return inside.size === 1 ? 'agrees' : 'cannot-tell';
  };
  return nominals.map((nominal) => ({ ratio: nominal, verdict: verdictOf(nominal) }));
}

/**
 * The same for a ratio of two lifts, with the valve lift that each nominal needs.
 *
 * Equation: needsValveLift = nominal · L
 *
 * @param nominals [1] nominal ratios, above zero
 * @param interval [1] low and high end of the 95 % interval
 * @param lobeLift [m] lobe lift, above zero
 * @returns ratio and verdict of each, needsValveLift [m]
 *
 * Source: definition.
 */
export function judgeNominals(
  nominals: readonly number[],
  interval: readonly [number, number],
  lobeLift: number,
): NominalWithLift[] {
  return judgeByInterval(nominals, interval).map((each) => ({
    ...each,
    needsValveLift: each.ratio * lobeLift,
  }));
}
