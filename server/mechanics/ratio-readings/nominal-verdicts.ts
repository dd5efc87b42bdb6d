type NominalVerdict = 'agrees' | 'differs' | 'cannot-tell';

interface JudgedNominal {
  readonly ratio: number;
  readonly verdict: NominalVerdict;
  /** Valve lift that this nominal needs on this lobe. */
  readonly needsValveLift: number;
}

/**
 * Sets nominal ratios against the interval of a measured one.
 *
 * Equation: needsValveLift = nominal · L
 *
 * @param nominals [1] nominal ratios, above zero
 * @param interval [1] low and high end of the 95 % interval
 * @param lobeLift [m] lobe lift, above zero
 * @returns each nominal's verdict: `agrees` alone inside the interval, `cannot-tell` inside with another,
 * `differs` outside; needsValveLift [m]
 *
 * Validity: a nominal listed twice counts once; the interval's ends count as inside.
 * Source: a verdict by interval, JCGM 106:2012, 8.2, in plain words (from memory).
 */
export function judgeNominals(
  nominals: readonly number[],
  [low, high]: readonly [number, number],
  lobeLift: number,
): JudgedNominal[] {
  const inside = new Set(nominals.filter((nominal) => nominal >= low && nominal <= high));
  const verdictOf = (nominal: number): NominalVerdict => {
    if (!inside.has(nominal)) return 'differs';
    return inside.size === 1 ? 'agrees' : 'cannot-tell';
  };
  return nominals.map((nominal) => ({
    ratio: nominal,
    verdict: verdictOf(nominal),
    needsValveLift: nominal * lobeLift,
  }));
}
