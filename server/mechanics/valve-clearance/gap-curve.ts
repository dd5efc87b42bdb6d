import type { LiftCurve } from '../lobe/lift-curve.ts';
import { pistonDrop, pistonDropRate } from '../slider-crank/piston-travel.ts';
import type { SliderCrank } from '../slider-crank/slider-crank.ts';

/** A valve over a piston; lengths in metres, angles in radians. */
interface ValveOverPiston {
  readonly crank: SliderCrank;
  readonly valveAngle: number;
  readonly floor: 'pocket' | 'flat';
  readonly closedGapAtTdc: number;
  readonly lobe: LiftCurve;
  readonly ratio: number;
  readonly lash: number;
}

/** Everything that depends on the crank angle. */
export interface GapCurve {
  gapAt(crankAngle: number): number;
  slopeAt(crankAngle: number): number;
  valveLiftAt(crankAngle: number): number;
  radialShiftAt(crankAngle: number): number;
}

/**
 * The gap between valve and piston along the valve, against crank angle from true top dead centre.
 *
 * Equation: c = c₀ + D·(k·n)/(v·n) − lift; (k·n)/(v·n) is cosγ for a pocket floor that lies along the valve head, 1/cosγ for
 * a flat crown; lift = lobe lift·ratio − lash while that is above zero, the valve being on its seat otherwise;
 * radial shift of the pocket = D·sinγ
 *
 * @param setup [1] lengths [m], angles [rad]
 * @returns gap [m], its slope [m/rad], lift at the valve [m], radial shift [m]
 *
 * Validity: rigid parts; no piston rock, rod stretch or float; floor and valve in one plane with the bore.
 * Source: derived here (ray and plane).
 */
export function gapCurve(setup: ValveOverPiston): GapCurve {
  const { crank, lobe, ratio, lash, closedGapAtTdc } = setup;
  const cosine = Math.cos(setup.valveAngle);
  const perDrop = setup.floor === 'pocket' ? cosine : 1 / cosine;
  const sideways = Math.sin(setup.valveAngle);
  const valveLiftAt = (angle: number): number => Math.max(0, lobe.liftAt(angle) * ratio - lash);
  return {
    gapAt: (angle) => closedGapAtTdc + pistonDrop(crank, angle) * perDrop - valveLiftAt(angle),
    slopeAt: (angle) => {
      const opening = valveLiftAt(angle) > 0 ? lobe.slopeAt(angle) * ratio : 0;
      return pistonDropRate(crank, angle) * perDrop - opening;
    },
    valveLiftAt,
    radialShiftAt: (angle) => pistonDrop(crank, angle) * sideways,
  };
}
