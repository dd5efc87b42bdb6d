import { z } from 'zod';
import { impossible } from '../../../shared/problems/faults.ts';
import { choice } from '../../../shared/schemas/fields.ts';
import { out, outText } from '../../../shared/schemas/outputs.ts';
import { angle, length, load, quantity, rate } from '../../../shared/schemas/quantity-fields.ts';
import { turningCaution } from '../cam/caution.ts';
import { defineComputation } from '../kit/computation.ts';
import { MOTION_LAWS, motionLaw } from '../motion-laws/motion-law.ts';
import { separationOf } from '../motion-laws/separation.ts';
import { makerFirst } from '../springs/caution.ts';

const input = z.strictObject({
  effectiveMass: quantity(
    'mass',
    'moving mass brought to the valve: valve, retainer, locks, a third of the spring, the rocker’s inertia, and pushrod and lifter over ratio squared',
  ),
  seatLoad: load('load of the spring with the valve on its seat'),
  rate: rate('load the spring gains for each unit it is pressed'),
  law: choice(MOTION_LAWS, 'how the flank lifts the valve'),
  lift: length('lift at the valve'),
  flank: angle('cam degrees from the seat to full lift', { sign: 'positive' }),
});

const output = z.object({
  crankSpeed: out('speed', 'crank speed at which contact is lost'),
  camSpeed: out('speed', 'cam speed at which contact is lost'),
  atLift: out('length', 'lift at the valve where contact is lost first'),
  note: outText('what the figure is worth'),
});

const NOTE =
  'an upper bound, from a rigid body: a real valvetrain bends, its spring surges, and it floats below this speed';

/**
 * Speed at which the spring can no longer hold the valvetrain to the lobe, were every part rigid.
 *
 * Equation: m·|a(θ)|·ω² = F₀ + k·h(θ), the least ω over the slowing half of the flank; crankSpeed = 2·camSpeed
 *
 * @param effectiveMass [kg] m, at the valve, above zero
 * @param seatLoad [N] F₀, not negative
 * @param rate [N/m] k, above zero
 * @param law [1] `parabolic`, `shm`, `cycloidal`, `modified-trapezoid`, `modified-sine`, `3-4-5` or `4-5-6-7`
 * @param lift [m] full lift at the valve, above zero
 * @param flank [rad of the cam] from the seat to full lift, above zero, to 360°
 * @returns crankSpeed [rad/s], camSpeed [rad/s], atLift [m], note [1]
 * @throws impossible-input when the flank is longer than a turn of the cam
 *
 * Validity: rigid parts, no friction, no surge, no lash; an upper bound, never a promise.
 * Source: derived here, balance of the spring's load and the inertia; the laws as in R. L. Norton, Design of Machinery,
 * chapter 8 (from memory).
 */
function separationSpeed(given: z.output<typeof input>): z.output<typeof output> {
  if (given.flank > 2 * Math.PI) impossible(['flank'], 'is longer than a whole turn of the cam');
  const { camSpeed, atLift } = separationOf(motionLaw(given.law), given);
  return { crankSpeed: 2 * camSpeed, camSpeed, atLift, note: NOTE };
}

export const computation = defineComputation({
  name: 'separation-speed',
  title: 'Separation speed',
  summary: 'Speed at which the spring would lose hold of the valvetrain, were every part rigid.',
  words: ['valve float', 'float', 'rpm limit', 'spring rate', 'valvetrain mass', 'bounce', 'motion law'],
  input,
  output,
  equation:
    'mass × |acceleration| × ω² = seat load + rate × lift so far, least ω over the slowing half of the flank; crank speed = 2 × cam speed',
  tex: "\\omega = \\min_{u \\ge 1/2} \\sqrt{\\frac{F_0 + k\\,h\\,s(u)}{m\\,h\\,|s''(u)|/\\beta^2}}, \\qquad n_\\mathrm{crank} = 2\\,n_\\mathrm{cam}",
  source:
    'derived here, balance of spring load and inertia; motion laws as in R. L. Norton, Design of Machinery, chapter 8 (from memory)',
  validity: 'rigid parts, no friction, no spring surge, no lash: an upper bound',
  assumptions: ({ law }) => [
    'every part is rigid, the spring does not surge, nothing rubs, no lash',
    `a lobe that follows the ${law} law all the way; a real lobe is its own curve`,
    'the crank turns twice for each turn of the cam',
  ],
  cautions: () => [
    'An upper bound only: the valvetrain loses control below it. Leave the rev limit to the makers of cam and springs.',
    turningCaution,
    makerFirst,
  ],
  example: {
    inputs: {
      effectiveMass: { value: 0.2, unit: 'kg' },
      seatLoad: { value: 250, unit: 'N' },
      rate: { value: 40, unit: 'N/mm' },
      law: 'shm',
      lift: { value: 10, unit: 'mm' },
      flank: { value: 180, unit: 'deg' },
    },
    result: {
      // An eccentric of 5 mm: ω² = (250 N + 40 N/mm × 10 mm)/(0.2 kg × 5 mm), least at full lift.
      crankSpeed: { value: (60 / Math.PI) * Math.sqrt(650 / 0.001), unit: 'rpm' },
      camSpeed: { value: (30 / Math.PI) * Math.sqrt(650 / 0.001), unit: 'rpm' },
      atLift: { value: 10 / 25.4, unit: 'in' },
      note: NOTE,
    },
  },
  headline: () => ['crankSpeed'],
  compute: separationSpeed,
});
