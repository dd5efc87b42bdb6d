/**
 * How far across the stem the tip stands from where it would be with its arm square to the valve.
 *
 * Equation: across = b − √(b² − y²), written as y²/(b + √(b² − y²)) to lose no figures
 *
 * @param arm [m] pivot to the roller's centre b
 * @param beyondSquare [m] y, how far along the valve the tip stands from square, up to b either way
 * @returns [m] not negative
 *
 * Validity: a round tip on a flat stem end square to the valve: the roller's radius drops out.
 * Source: derived here.
 */
export function across(arm: number, beyondSquare: number): number {
  return beyondSquare ** 2 / (arm + Math.sqrt((arm - beyondSquare) * (arm + beyondSquare)));
}

/** The turn of the arm, closed to open, when the tip starts `start` from square and moves by `lift`. */
export function turnOf(arm: number, start: number, lift: number): number {
  return Math.asin((start + lift) / arm) - Math.asin(start / arm);
}
