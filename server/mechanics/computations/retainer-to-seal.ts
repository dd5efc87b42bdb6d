import { z } from 'zod';
import { length } from '../../../shared/schemas/quantity-fields.ts';
import { defineComputation } from '../kit/computation.ts';
import { defaultLimit } from '../kit/limits.ts';
import { judged, verdictInputs, verdictOutputs } from '../kit/verdict.ts';
import { makerFirst, springCaution } from '../springs/caution.ts';

const input = z.strictObject({
  closedDistance: length('retainer’s underside to the top of the seal, or the guide, with the valve closed', {
    sign: 'not-negative',
  }),
  netLift: length('lift of the valve off its seat', { below: 'impossible-input' }),
  ...verdictInputs,
});

const output = z.object(verdictOutputs);

/**
 * Room left between the retainer and the valve seal at full lift.
 *
 * Equation: margin = closedDistance − netLift
 *
 * @param closedDistance [m] retainer's underside to the top of the seal with the valve closed, not negative
 * @param netLift [m] lift of the valve off its seat, above zero
 * @param limit [m] least room wanted; left out, the default of the limits table
 * @param uncertainty [m] half-width of the margin's 95 % interval; left out, zero
 * @returns margin [m] (negative: the retainer meets the seal first), limit [m], verdict [1]
 * @throws impossible-input when the net lift is at or below zero
 *
 * Validity: the retainer moves with the valve; no credit is taken for what the train bends.
 * Source: definition, common practice, no published source.
 */
function retainerToSeal(given: z.output<typeof input>): z.output<typeof output> {
  return judged(given.closedDistance - given.netLift, given, defaultLimit('retainer-to-seal'));
}

export const computation = defineComputation({
  name: 'retainer-to-seal',
  title: 'Retainer to seal',
  summary: 'Room left between the retainer and the valve seal at full lift.',
  words: ['seal clearance', 'guide', 'retainer', 'valve seal', 'crushed seal'],
  input,
  output,
  equation: 'margin = closed distance − net lift',
  tex: 'm = d_\\mathrm{closed} - h',
  source: 'definition, common practice, no published source',
  validity: 'the retainer moves with the valve; lift on a light spring less running lash',
  assumptions: (given) => [
    'the lift is that of a light spring less running lash: no credit for what the train bends',
    ...(given.limit === undefined
      ? ['the default limit for retainer to seal, common practice, no published source']
      : []),
    ...(given.uncertainty === undefined ? ['distance and lift taken as exact'] : []),
  ],
  cautions: () => [springCaution, makerFirst],
  example: {
    inputs: { closedDistance: { value: 0.65, unit: 'in' }, netLift: { value: 0.56, unit: 'in' } },
    result: {
      margin: { value: 0.09, unit: 'in' },
      limit: { value: 0.05, unit: 'in' },
      verdict: 'clear',
    },
  },
  headline: () => ['margin'],
  compute: retainerToSeal,
});
