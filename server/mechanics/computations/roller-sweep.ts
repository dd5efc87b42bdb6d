import { z } from 'zod';
import { impossible } from '../../../shared/problems/faults.ts';
import { CAN_BE } from '../../../shared/schemas/can-be.ts';
import { choice } from '../../../shared/schemas/fields.ts';
import { out, outList } from '../../../shared/schemas/outputs.ts';
import { length } from '../../../shared/schemas/quantity-fields.ts';
import { turningCaution } from '../cam/caution.ts';
import { defineComputation } from '../kit/computation.ts';
import { across, turnOf } from '../rocker-geometry/tip-arc.ts';

/** Even steps of lift along the path; even, so that half lift is one of its points. */
const STEPS = 20;

const input = z.strictObject({
  pivotToTip: length('rocker pivot to the roller’s centre', { canBe: CAN_BE.pivotToTip }),
  netLift: length('lift of the valve off its seat', { below: 'impossible-input', canBe: CAN_BE.valveLift }),
  setAt: choice(
    ['mid-lift', 'closed', 'open'],
    'where the line from pivot to roller stands square to the valve',
  ),
});

const output = z.object({
  sweep: out('length', 'width of the roller’s way across the stem'),
  leastSweep: out('length', 'the least this lift can have on this arm'),
  rotation: out('angle', 'turn of the rocker from closed to open'),
  pivotOffset: out('length', 'pivot below the roller’s axis with the valve closed, measured along the valve'),
  path: outList(
    z.object({
      lift: out('length', 'valve lift'),
      across: out('length', 'roller in from the outermost point of its way'),
    }),
    `${STEPS + 1} points at even steps of lift, closed to open`,
  ),
});

/** How far before square the roller stands with the valve closed. */
function startOf({ pivotToTip: arm, netLift, setAt }: z.output<typeof input>): number {
  const fields = ['netLift', 'pivotToTip'];
  if (netLift > 2 * arm) impossible(fields, 'the lift is more than twice the arm');
  if (setAt === 'mid-lift') return netLift / 2;
  if (netLift > arm)
    impossible(fields, 'an arm set square at one end can’t lift by more than its own length');
  return setAt === 'open' ? netLift : 0;
}

/**
 * How far a roller tip travels across the valve stem, for a rocker set square at mid-lift, closed or open.
 *
 * Equation: sweep = b·(max cosφ − min cosφ), h = b·(sinφ₂ − sinφ₁); least when φ₂ = −φ₁: b − √(b² − h²/4)
 *
 * @param pivotToTip [m] pivot to the roller's centre b, above zero
 * @param netLift [m] lift of the valve h, above zero
 * @param setAt [1] where the arm is square to the valve: `mid-lift`, `closed` or `open`
 * @returns sweep [m], leastSweep [m], rotation [rad], pivotOffset [m] (pivot below the roller's axis when closed,
 * positive), path (lift [m], across [m] from the outermost point)
 * @throws impossible-input when the lift is over twice the arm, or over the arm when set closed or open
 *
 * Validity: a flat stem end square to the valve, so the roller's radius drops out; the pivot stands still.
 * Source: derived here; a printed example (30° of turn, .709 in of lift, sweep .184 in when set square at one end)
 * is met within its rounding.
 */
function rollerSweep(given: z.output<typeof input>): z.output<typeof output> {
  const { pivotToTip: arm, netLift } = given;
  const start = startOf(given);
  return {
    sweep: Math.max(across(arm, start), across(arm, netLift - start)),
    leastSweep: across(arm, netLift / 2),
    rotation: turnOf(arm, -start, netLift),
    pivotOffset: start,
    path: Array.from({ length: STEPS + 1 }, (_, step) => {
      const lift = netLift * (step / STEPS);
      return { lift, across: across(arm, lift - start) };
    }),
  };
}

export const computation = defineComputation({
  name: 'roller-sweep',
  title: 'Roller sweep',
  summary: 'How far the roller travels across the valve stem, and the least it could.',
  words: [
    'sweep',
    'wipe pattern',
    'witness mark',
    'roller tip travel',
    'half-lift set-up',
    'pushrod length',
    'geometry',
  ],
  input,
  output,
  equation: 'sweep = b·(max cos φ − min cos φ); h = b·(sin φ₂ − sin φ₁); least sweep = b − √(b² − h²/4)',
  tex: 's = b\\,(\\cos\\varphi_{\\max} - \\cos\\varphi_{\\min}), \\qquad h = b\\,(\\sin\\varphi_2-\\sin\\varphi_1), \\qquad s_{\\min} = b-\\sqrt{b^2-\\tfrac{h^2}{4}}',
  source:
    'derived here; a printed example of 30° turn, .709 in lift and .184 in sweep is met within its rounding',
  validity: 'flat stem end square to the valve (the roller’s radius drops out), pivot standing still',
  assumptions: () => [
    'the stem end is flat and square to the valve, so the roller’s radius does not matter',
    'the pivot does not move: no stud flex',
    'the sweep of the roller alone: a mark in ink is wider by the contact line',
  ],
  cautions: () => [turningCaution],
  example: {
    inputs: {
      pivotToTip: { value: 1.6, unit: 'in' },
      netLift: { value: 0.6, unit: 'in' },
      setAt: 'mid-lift',
    },
    result: {
      sweep: { value: 0.0283766354498289, unit: 'in' },
      leastSweep: { value: 0.0283766354498289, unit: 'in' },
      rotation: { value: 21.61384574972068, unit: 'deg' },
      pivotOffset: { value: 0.3, unit: 'in' },
      path: Array.from({ length: STEPS + 1 }, (_, step) => {
        const lift = 0.6 * (step / STEPS);
        // The roller's centre lies on a circle about the pivot: x = √(b² − y²), y counted from half lift.
        const inFrom = 1.6 - Math.sqrt(1.6 ** 2 - (lift - 0.3) ** 2);
        return { lift: { value: lift, unit: 'in' }, across: { value: inFrom, unit: 'in' } };
      }),
    },
  },
  headline: () => ['sweep'],
  compute: rollerSweep,
});
