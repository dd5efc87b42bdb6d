import { z } from 'zod';
import { impossible } from '../../../shared/problems/faults.ts';
import { choice } from '../../../shared/schemas/fields.ts';
import { out } from '../../../shared/schemas/outputs.ts';
import { angle, length } from '../../../shared/schemas/quantity-fields.ts';
import { defineComputation } from '../kit/computation.ts';
import { DEG } from '../kit/si.ts';

const input = z.strictObject({
  reading: length('what the indicator shows', { sign: 'not-negative' }),
  tilt: angle('how far the plunger leans from the line of the motion', { sign: 'not-negative' }),
  contact: choice(
    ['flat-face', 'carried-point'],
    'what the tip rests on: a flat face square to the motion that slides under it, or one point that carries it along',
  ),
});

const output = z.object({
  trueMotion: out('length', 'how far the part really moved'),
  error: out('length', 'reading less true motion: positive where the dial reads high'),
});

/**
 * What a leaning indicator plunger reads too much or too little.
 *
 * Equation: flat face: true = reading · cosθ; carried point: true = reading / cosθ; error = reading − true
 *
 * @param reading [m] what the indicator shows, not negative
 * @param tilt [rad] lean of the plunger from the line of the motion θ, not negative, under a quarter turn
 * @param contact [1] `flat-face`: a face square to the motion slides under the tip, the dial reads high;
 * `carried-point`: the tip is held in one spot, the dial reads low
 * @returns trueMotion [m], error [m] (positive where the dial reads high)
 * @throws impossible-input when the tilt is 90° or more: the plunger would not move
 *
 * Validity: a straight motion, a lean that does not change with it, nothing that bends.
 * Source: derived here from reading = d·(m·n)/(p·n), motion m, plunger p, normal of the contact face n; published
 * factors of lever-type indicators (.98 at 10°, .94 at 20°) are the carried point's.
 */
function cosineError({ reading, tilt, contact }: z.output<typeof input>): z.output<typeof output> {
  const quarter = 90 * DEG;
  if (tilt >= quarter * (1 - 1e-12))
    impossible(['tilt'], 'must be under 90°: square to it the plunger would not move');
  const trueMotion = contact === 'flat-face' ? reading * Math.cos(tilt) : reading / Math.cos(tilt);
  return { trueMotion, error: reading - trueMotion };
}

export const computation = defineComputation({
  name: 'cosine-error',
  title: 'Leaning indicator',
  summary: 'What an indicator that leans reads too much or too little, by what its tip rests on.',
  words: ['cosine error', 'plunger not parallel', 'indicator at an angle', 'tilted plunger', 'leaning dial'],
  input,
  output,
  equation: 'flat face: true = reading × cos(tilt); carried point: true = reading / cos(tilt)',
  tex: 'd_\\mathrm{flat}=x\\cos\\theta,\\qquad d_\\mathrm{carried}=\\frac{x}{\\cos\\theta}',
  source:
    'derived here; agrees with the factors printed for lever-type indicators (10° .98, 20° .94, 30° .87)',
  validity: 'a straight motion and a lean that stays the same',
  assumptions: ({ contact }) => [
    contact === 'flat-face'
      ? 'the face is square to the motion and slides under the tip: the dial reads high'
      : 'the tip stays on one point and is carried along: the dial reads low',
    'the lean does not change through the motion',
  ],
  cautions: ({ tilt }) => [
    ...(tilt > 15 * DEG
      ? ['Over 15° the figure hangs on how well the lean is known: set the plunger in line and read again.']
      : []),
    'Set the plunger in line rather than correct it, if it can be.',
  ],
  example: {
    inputs: { reading: { value: 0.5, unit: 'in' }, tilt: { value: 10, unit: 'deg' }, contact: 'flat-face' },
    result: {
      trueMotion: { value: 0.492403876506104, unit: 'in' },
      error: { value: 0.007596123493896, unit: 'in' },
    },
  },
  headline: () => ['trueMotion'],
  compute: cosineError,
});
