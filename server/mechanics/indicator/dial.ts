/** A dial: travel of the plunger per turn of the hand, and which way the hand runs. */
interface Dial {
  readonly perTurn: number;
  readonly runs: 'clockwise' | 'anticlockwise';
}

/** Turns as the small hand counts them, and the hand past the last turn in the direction it runs. */
interface DialPosition {
  readonly turns: number;
  readonly needle: number;
}

/**
 * How far the plunger has moved from zero turns.
 *
 * Equation: position = turns · perTurn + needle
 *
 * @param at [m] turns [1] and needle [m], not negative
 * @param perTurn [m] travel per turn, above zero
 * @returns position [m]
 *
 * Source: common practice, no published source.
 */
export const travelled = ({ turns, needle }: DialPosition, perTurn: number): number =>
  turns * perTurn + needle;

/**
 * Where the hand stands on the face.
 *
 * Equation: clockwise: 2π·needle/perTurn; anticlockwise: 2π·(1 − needle/perTurn), zero at zero
 *
 * @param dial [m] perTurn, above zero; runs [1]
 * @param needle [m] past the last turn in the direction the hand runs, not negative, under perTurn
 * @returns angle [rad] clockwise from zero, at zero or above, under a full turn
 *
 * Validity: a hand that goes backwards shows the complement on clockwise figures: 4 turns and .082 in stands at 18.
 * Source: derived here.
 */
export function needleAngle({ perTurn, runs }: Dial, needle: number): number {
  const part = needle / perTurn;
  return 2 * Math.PI * (runs === 'clockwise' ? part : (1 - part) % 1);
}
