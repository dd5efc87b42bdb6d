import type { MotionLaw } from './law.ts';

/** A valvetrain brought to the valve: its mass, its spring, and the lift it makes, in SI. */
interface LiftedMass {
  readonly effectiveMass: number;
  readonly seatLoad: number;
  readonly rate: number;
  readonly lift: number;
  /** Cam angle from the seat to full lift [rad]. */
  readonly flank: number;
}

/** Cam speed [rad/s] at which contact is lost, and the lift [m] where. */
interface Separation {
  readonly camSpeed: number;
  readonly atLift: number;
}

/** Points from mid-flank to full lift; a multiple of 8, so that every joint of the laws is one of them. */
const POINTS = 1024;
/** Halvings that bring a step of the scan down to the last bit. */
const HALVINGS = 60;

/** A point of the slowing half of the flank; `share` is how hard the spring is called upon there. */
interface Point {
  readonly u: number;
  readonly share: number;
  /** Sign of d(share)/du. */
  readonly rising: number;
}

/**
 * The lowest cam speed at which the spring can no longer hold the follower to the lobe.
 *
 * Equation: m·|a|·(lift/flank²)·ω² = F₀ + k·lift·s, solved for the least ω over mid-flank to full lift; that is where
 * |a|/F is greatest. A scan finds the peak, and halving of the interval brings d(|a|/F)/du to zero.
 *
 * @param law the motion law
 * @param train mass [kg], seat load [N], rate [N/m], lift at the valve [m], flank [rad of the cam]
 * @returns camSpeed [rad/s], atLift [m]
 *
 * Validity: rigid parts, no friction, no surge of the spring; the train's inertia all at the valve.
 * Source: derived here, balance of the spring's load and the inertia.
 */
export function separationOf(law: MotionLaw, train: LiftedMass): Separation {
  const { effectiveMass, seatLoad, rate, lift, flank } = train;
  const point = (u: number): Point => {
    const { s, v, a, j } = law.at(u);
    const load = seatLoad + rate * lift * s;
    return { u, share: -a / load, rising: -j * load + a * rate * lift * v };
  };
  const worst = refined(point, scanned(point));
  return {
    camSpeed: flank / Math.sqrt(effectiveMass * lift * worst.share),
    atLift: lift * law.at(worst.u).s,
  };
}

const at = (index: number) => 0.5 + index / (2 * POINTS);

function scanned(point: (u: number) => Point): number {
  let best = { index: 0, share: Number.NEGATIVE_INFINITY };
  for (let index = 0; index <= POINTS; index += 1) {
    const { share } = point(at(index));
    if (share > best.share) best = { index, share };
  }
  return best.index;
}

/** The peak between the neighbours of the best point of the scan, or that point where it is an end of the flank. */
function refined(point: (u: number) => Point, best: number): Point {
  const found = point(at(best));
  const next = at(found.rising > 0 ? best + 1 : best - 1);
  if (next < 0.5 || next > 1) return found;
  let [low, high] = found.rising > 0 ? [found.u, next] : [next, found.u];
  for (let step = 0; step < HALVINGS; step += 1) {
    const middle = (low + high) / 2;
    if (point(middle).rising > 0) low = middle;
    else high = middle;
  }
  const peak = point((low + high) / 2);
  return peak.share >= found.share ? peak : found;
}
