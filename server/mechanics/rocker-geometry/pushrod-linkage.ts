/**
 * A rocker with its pushrod and lifter in one plane, valve closed: the pivot at the origin, the valve opening
 * toward −y, opening turning the rocker clockwise.
 */
export interface PushrodLinkage {
  readonly pivotToTip: number;
  readonly pivotToCup: number;
  /** From the valve arm to the cup arm, counter-clockwise. */
  readonly armAngle: number;
  /** Of the valve arm above square to the valve. */
  readonly tipAngleClosed: number;
  readonly pushrodLength: number;
  /** Of the pushrod from the valve's line, lifter to cup, positive toward the valve. */
  readonly pushrodAngle: number;
  /** Of the lifter's way up its bore, the same way. */
  readonly lifterBoreAngle: number;
}

/** Where the parts stand at one rotation from closed. */
export interface LinkageState {
  readonly rotation: number;
  readonly valveLift: number;
  /** Lifter travel up its bore, the lobe's lift. */
  readonly lobeLift: number;
  /** Lifter travel per radian of the rocker. */
  readonly liftRate: number;
  /** Valve motion over lifter motion, here. */
  readonly ratio: number;
}

/** Valve lift at a turn from closed: b·(sinφ₀ − sin(φ₀ − ρ)), written without the difference. */
export const valveLiftAt = ({ pivotToTip, tipAngleClosed }: PushrodLinkage, rotation: number): number =>
  2 * pivotToTip * Math.sin(rotation / 2) * Math.cos(tipAngleClosed - rotation / 2);

/**
 * Closes the loop pivot – cup – pushrod – lifter bore at a rotation of the rocker.
 *
 * Equation: cup = a∠(φ₀ + β − ρ); the lifter stands where its bore's line meets the circle of the pushrod's length
 * about the cup: L = w·n − √(ℓ² − (w × n)²), w from the closed lifter to the cup, n up the bore;
 * V = b·(sinφ₀ − sin(φ₀ − ρ)); dV/dL = b·cosφ·(n·e)/(e·dcup/dρ), e along the pushrod
 *
 * @param linkage [1] lengths [m] and angles [rad]
 * @param rotation [rad] of the rocker from closed, positive opening
 * @returns the state; undefined when the pushrod can't reach the bore's line
 *
 * Validity: rigid parts in one plane; ball ends as points.
 * Source: derived here (circle and line).
 */
export function linkageAt(linkage: PushrodLinkage, rotation: number): LinkageState | undefined {
  const { pivotToTip, pivotToCup, armAngle, tipAngleClosed, pushrodLength, pushrodAngle, lifterBoreAngle } =
    linkage;
  const start = tipAngleClosed + armAngle;
  const [boreX, boreY] = [Math.sin(lifterBoreAngle), Math.cos(lifterBoreAngle)];
  // From the closed lifter to the cup: the closed pushrod and the cup's chord since, free of large differences.
  const chord = 2 * pivotToCup * Math.sin(rotation / 2);
  const chordX = chord * Math.sin(start - rotation / 2);
  const chordY = -chord * Math.cos(start - rotation / 2);
  const toCupX = pushrodLength * Math.sin(pushrodAngle) + chordX;
  const toCupY = pushrodLength * Math.cos(pushrodAngle) + chordY;
  const along = toCupX * boreX + toCupY * boreY;
  const aside = toCupX * boreY - toCupY * boreX;
  if (pushrodLength <= Math.abs(aside)) return undefined;
  const upright = Math.sqrt((pushrodLength - aside) * (pushrodLength + aside));
  // (along² − upright²)/(along + upright): the difference itself would lose figures for a small turn.
  const alongRod = chordX * Math.sin(pushrodAngle) + chordY * Math.cos(pushrodAngle);
  const lobeLift = (2 * pushrodLength * alongRod + chord * chord) / (along + upright);
  const cupAngle = start - rotation;
  const cupX = pivotToCup * Math.sin(cupAngle);
  const cupY = -pivotToCup * Math.cos(cupAngle);
  const cupAlong = cupX * boreX + cupY * boreY;
  const cupAside = cupX * boreY - cupY * boreX;
  const liftRate = cupAlong + (aside * cupAside) / upright;
  const tipAngle = tipAngleClosed - rotation;
  return {
    rotation,
    valveLift: valveLiftAt(linkage, rotation),
    lobeLift,
    liftRate,
    ratio: (pivotToTip * Math.cos(tipAngle)) / liftRate,
  };
}
