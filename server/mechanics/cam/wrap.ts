const TURN = 2 * Math.PI;

function within(angle: number, period: number): number {
  // Left alone where it already is within: taking zero off must not cost a digit.
  if (angle > -period / 2 && angle <= period / 2) return angle;
  return angle - period * Math.ceil(angle / period - 0.5);
}

/** The angle less whole turns of the crank, above −180° and to 180°. */
export const withinHalfTurn = (angle: number): number => within(angle, TURN);

/** The angle less whole cycles of 720°, above −360° and to 360°. */
export const withinHalfCycle = (angle: number): number => within(angle, 2 * TURN);
