import { z } from 'zod';
import { ratio } from '../../../shared/schemas/number-fields.ts';
import { out } from '../../../shared/schemas/outputs.ts';
import { load } from '../../../shared/schemas/quantity-fields.ts';
import { defineComputation } from '../kit/computation.ts';
import { makerFirst } from '../springs/caution.ts';

const input = z.strictObject({
  springLoad: load('load of the spring at the valve, at the lift in question'),
  ratio: ratio('rocker ratio, valve over lobe'),
});

const output = z.object({
  pushrodLoad: out('load', 'load along the pushrod'),
  pivotLoad: out('load', 'load on the stud, pedestal or shaft'),
});

/**
 * Load on the pushrod and on the rocker's pivot from the spring load at the valve.
 *
 * Equation: pushrodLoad = springLoad · ratio; pivotLoad = springLoad · (1 + ratio)
 *
 * @param springLoad [N] load of the spring at the valve, not negative
 * @param ratio [1] rocker ratio, valve over lobe, above zero
 * @returns pushrodLoad [N], pivotLoad [N]
 *
 * Validity: at rest, valve and pushrod pulling the same way; running adds the inertia of the train.
 * Source: balance of moments and forces on a lever, statics; common practice, no published source for the naming.
 */
function pivotLoad({ springLoad, ratio: rockerRatio }: z.output<typeof input>): z.output<typeof output> {
  const pushrodLoad = springLoad * rockerRatio;
  return { pushrodLoad, pivotLoad: springLoad + pushrodLoad };
}

export const computation = defineComputation({
  name: 'pivot-load',
  title: 'Pushrod and pivot load',
  summary: 'Load on the pushrod, and on the stud or shaft, from the spring load at the valve.',
  words: ['stud load', 'pushrod load', 'trunnion load', 'shaft load', 'open load'],
  input,
  output,
  equation: 'pushrod load = spring load × ratio; pivot load = spring load × (1 + ratio)',
  tex: 'F_\\mathrm{pushrod} = F\\,r, \\qquad F_\\mathrm{pivot} = F\\,(1 + r)',
  source: 'balance of moments and forces on a lever; common practice, no published source for the naming',
  validity: 'at rest, valve and pushrod pulling the same way',
  assumptions: () => [
    'at rest: a running engine adds the inertia of the train',
    'valve and pushrod pull the same way, so that their loads add up at the pivot',
  ],
  cautions: () => [makerFirst],
  example: {
    inputs: { springLoad: { value: 500, unit: 'lbf' }, ratio: 1.5 },
    result: { pushrodLoad: { value: 750, unit: 'lbf' }, pivotLoad: { value: 1250, unit: 'lbf' } },
  },
  headline: () => ['pivotLoad'],
  compute: pivotLoad,
});
