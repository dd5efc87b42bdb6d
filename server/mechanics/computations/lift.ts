import { z } from 'zod';
import { impossible } from '../../../shared/problems/faults.ts';
import { ratio } from '../../../shared/schemas/number-fields.ts';
import { out } from '../../../shared/schemas/outputs.ts';
import { length } from '../../../shared/schemas/quantity-fields.ts';
import { defineComputation, nothing } from '../kit/computation.ts';

const input = z.strictObject({
  lobeLift: length('rise of the lifter on the lobe'),
  ratio: ratio('rocker ratio, valve over lobe'),
  lash: length('gap at the valve tip with the valve closed; left out, zero', {
    sign: 'not-negative',
  }).optional(),
});

const output = z.object({
  grossLift: out('length', 'lobe lift × ratio'),
  netLift: out('length', 'lift of the valve off its seat'),
});

/**
 * Gross and net valve lift from lobe lift, rocker ratio and lash at the valve tip.
 *
 * Equation: grossLift = lobeLift · ratio; netLift = grossLift − lash
 *
 * @param lobeLift [m] rise of the lifter on the lobe, above zero
 * @param ratio [1] rocker ratio, valve over lobe, above zero
 * @param lash [m] gap at the valve tip with the valve closed, not negative; left out, zero
 * @returns grossLift [m], netLift [m]
 * @throws impossible-input when the lash takes up all the lift (net lift at or below zero)
 *
 * Validity: a rigid train; a solid lifter's lash at the valve, not at the lifter.
 * Source: definition of gross and net lift, trade practice section 5 (common practice, no published source).
 */
function lift({ lobeLift, ratio: rockerRatio, lash = 0 }: z.output<typeof input>): z.output<typeof output> {
  const grossLift = lobeLift * rockerRatio;
  const netLift = grossLift - lash;
  // Without lash only a lobe and a ratio too small for a double can leave nothing.
  const fields = lash > 0 ? ['lash'] : ['lobeLift', 'ratio'];
  if (netLift <= 0) impossible(fields, 'leaves no lift: the valve would not open');
  return { grossLift, netLift };
}

export const computation = defineComputation({
  name: 'lift',
  title: 'Valve lift',
  summary: 'Gross and net lift at the valve from lobe lift, ratio and lash.',
  words: ['net lift', 'gross lift', 'lash', 'valve lift', 'lobe lift times ratio'],
  input,
  output,
  equation: 'grossLift = lobeLift × ratio; netLift = grossLift − lash',
  tex: 'h_\\mathrm{gross} = L\\,r, \\qquad h_\\mathrm{net} = L\\,r - g',
  source: 'definition, common practice, no published source; worked figure .544 in derived by hand',
  validity: 'a rigid train, lash taken at the valve tip',
  assumptions: (given) => [
    'nothing in the train bends',
    ...(given.lash === undefined ? ['no lash: the net lift is the gross lift'] : []),
  ],
  cautions: nothing,
  example: {
    inputs: { lobeLift: { value: 0.35, unit: 'in' }, ratio: 1.6, lash: { value: 0.016, unit: 'in' } },
    result: { grossLift: { value: 0.56, unit: 'in' }, netLift: { value: 0.544, unit: 'in' } },
  },
  headline: () => ['netLift'],
  compute: lift,
});
