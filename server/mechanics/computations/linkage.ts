import { z } from 'zod';
import { CAN_BE } from '../../../shared/schemas/can-be.ts';
import { out, outList, outNumber } from '../../../shared/schemas/outputs.ts';
import { angle, length } from '../../../shared/schemas/quantity-fields.ts';
import { turningCaution } from '../cam/caution.ts';
import { defineComputation } from '../kit/computation.ts';
import { driveLinkage } from '../rocker-geometry/drive-linkage.ts';
import { linkageExample } from '../rocker-geometry/linkage-example.ts';

/** Even steps of rotation in the answer; even, so that the half rotation is one of its points. */
const STEPS = 20;

const input = z.strictObject({
  pivotToTip: length('rocker pivot to the roller’s centre', { canBe: CAN_BE.pivotToTip }),
  pivotToCup: length('rocker pivot to the pushrod cup'),
  armAngle: angle('from the valve arm round to the cup arm, over the top'),
  tipAngleClosed: angle('valve arm above square to the valve with the valve closed; negative below'),
  pushrodLength: length('lifter seat to cup, centre to centre'),
  pushrodAngle: angle(
    'pushrod against the valve’s line, closed, positive leaning toward the valve at the top',
  ),
  lifterBoreAngle: angle('lifter bore against the valve’s line, the same way'),
  netLift: length('lift of the valve off its seat', { below: 'impossible-input', canBe: CAN_BE.valveLift }),
});

const output = z.object({
  lobeLift: out('length', 'rise of the lifter along its bore for this lift'),
  ratioAtLift: outNumber('valve lift over lobe lift, closed to this lift'),
  instantaneous: outList(
    z.object({
      rotation: out('angle', 'turn of the rocker from closed'),
      valveLift: out('length', 'valve lift there'),
      ratio: outNumber('valve motion over lifter motion there'),
    }),
    `${STEPS + 1} points at even steps of rotation, closed to open`,
  ),
  rotation: out('angle', 'turn of the rocker from closed to this lift'),
});

/**
 * Lobe lift, ratio at lift and ratio through the lift of a rocker, its pushrod and its lifter, from their geometry.
 *
 * Equation: the pushrod keeps its length between the cup on its arc and the lifter in its bore;
 * ratioAtLift = V/L; instantaneous dV/dL = b·cosφ·cosψ/(a·cosδ), δ between the cup's motion and the pushrod, ψ
 * between pushrod and bore
 *
 * @param pivotToTip [m] valve arm b, above zero
 * @param pivotToCup [m] cup arm a, above zero
 * @param armAngle [rad] β from the valve arm to the cup arm, counter-clockwise
 * @param tipAngleClosed [rad] φ₀ of the valve arm above square to the valve when closed, within ±90°
 * @param pushrodLength [m] ℓ, above zero
 * @param pushrodAngle [rad] p: lifter to cup lies along (sin p, cos p) when closed
 * @param lifterBoreAngle [rad] q: the lifter rises along (sin q, cos q)
 * @param netLift [m] valve lift V, above zero
 * @returns lobeLift [m], ratioAtLift [1], instantaneous (rotation [rad], valveLift [m], ratio [1]), rotation [rad]
 * @throws impossible-input when the lift is out of the valve arm's reach
 * @throws impossible-input when the parts can't be put together, or a rising lifter would not open the valve
 *
 * Validity: rigid parts in one plane; valve opening toward −y, opening turning clockwise, pivot at the origin and fixed.
 * Source: derived here.
 */
function linkage({ netLift, ...parts }: z.output<typeof input>): z.output<typeof output> {
  const states = driveLinkage(parts, netLift, STEPS);
  const { lobeLift = 0, rotation = 0 } = states.at(-1) ?? {};
  return {
    lobeLift,
    ratioAtLift: netLift / lobeLift,
    instantaneous: states.map((state) => ({
      rotation: state.rotation,
      valveLift: state.valveLift,
      ratio: state.ratio,
    })),
    rotation,
  };
}

export const computation = defineComputation({
  name: 'linkage',
  title: 'Rocker linkage',
  summary: 'Lobe lift and ratio through the lift, from the arms, the pushrod and the lifter bore.',
  words: [
    'rocker geometry',
    'instantaneous ratio',
    'ratio through lift',
    'pushrod angle',
    'lifter angle',
    'arms',
  ],
  input,
  output,
  equation: 'ratioAtLift = V/L; instantaneous dV/dL = b·cos φ·cos ψ/(a·cos δ)',
  tex: '\\frac{dV}{dL} = \\frac{b\\,\\cos\\varphi\\,\\cos\\psi}{a\\,\\cos\\delta}, \\qquad V = b\\,(\\sin\\varphi_0 - \\sin(\\varphi_0-\\rho))',
  source: 'derived here: the loop of arm, pushrod and bore closed exactly at each rotation',
  validity: 'rigid parts in one plane, pivot fixed, zero lash; a lash taken off lowers V/L and leaves dV/dL',
  assumptions: () => [
    'rigid parts that move in one plane, pivot fixed, no lash',
    'ratio at lift is valve lift over lobe lift from closed; the instantaneous ratio is that of their motions',
  ],
  cautions: () => [turningCaution],
  example: linkageExample,
  headline: () => ['ratioAtLift'],
  compute: linkage,
});
