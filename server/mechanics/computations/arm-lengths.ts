import { z } from 'zod';
import { bareList } from '../../../shared/schemas/number-fields.ts';
import { out, outList, outNumber } from '../../../shared/schemas/outputs.ts';
import { length } from '../../../shared/schemas/quantity-fields.ts';
import { defineComputation } from '../kit/computation.ts';
import { judgeByInterval, nominalVerdict } from '../ratio-readings/nominal-verdicts.ts';
import { armRatio } from '../rocker-geometry/arm-ratio.ts';

const arm = (description: string) =>
  z
    .strictObject({
      value: length('the length between the two centres'),
      errorLimit: length('how far off it can be, half-width', { sign: 'not-negative' }),
    })
    .meta({ description });

const input = z.strictObject({
  pivotToTip: arm('centre of the pivot to the centre of the roller, or to where a shoe touches'),
  pivotToCup: arm('centre of the pivot to the centre of the pushrod’s ball, seated in its cup'),
  nominals: bareList('nominal ratios to set the arms’ ratio against', {
    above: 0,
    beyond: 100,
    fewest: 0,
  }).optional(),
});

const nominal = z.object({
  ratio: outNumber('nominal ratio'),
  verdict: nominalVerdict,
  needsPivotToCup: out('length', 'cup arm that this nominal needs beside this tip arm'),
});

const output = z.object({
  ratio: outNumber('tip arm over cup arm'),
  standardUncertainty: outNumber('combined standard uncertainty of the ratio'),
  interval95: z.tuple([z.number(), z.number()]).meta({ description: '95 % interval, low and high' }),
  nominals: outList(nominal, 'each nominal against the interval').optional(),
});

/**
 * Ratio of a rocker off the engine, from its two arms between centres, with its 95 % interval.
 *
 * Equation: R = T/C; u_R² = (u_T/C)² + (R·u_C/C)², u = errorLimit/√3; interval R ± 1.96·u_R; a nominal needs C = T/nominal
 *
 * @param pivotToTip [m] {value, errorLimit}: pivot centre to tip centre, above zero; errorLimit below half of it
 * @param pivotToCup [m] {value, errorLimit}: pivot centre to the seated ball's centre, likewise
 * @param nominals [1] nominal ratios to set it against, above zero; may be left out
 * @returns ratio [1], standardUncertainty [1], interval95 [1]; nominals {ratio [1], verdict [1], needsPivotToCup [m]}
 * @throws impossible-input when an error limit is half its length or more
 * @throws impossible-input when the ratio comes out above 100
 *
 * Validity: errors small against the lengths, read independently; the ratio of the arms, which the valve sees at
 * mid-lift of a rocker that is set up square, and not on an engine as built.
 * Source: JCGM 100:2008, 4.3.7 and 5.1.2; the lever's ratio is its arms', common practice, no published source.
 */
function armLengths(given: z.output<typeof input>): z.output<typeof output> {
  const { pivotToTip, pivotToCup, nominals } = given;
  const { ratio, combined } = armRatio(pivotToTip, pivotToCup);
  const interval95: [number, number] = [ratio - combined.expanded, ratio + combined.expanded];
  return {
    ratio,
    standardUncertainty: combined.standardUncertainty,
    interval95,
    ...(nominals === undefined
      ? {}
      : {
          nominals: judgeByInterval(nominals, interval95).map((each) => ({
            ...each,
            needsPivotToCup: pivotToTip.value / each.ratio,
          })),
        }),
  };
}

const inch = (value: number) => ({ value, unit: 'in' });

export const computation = defineComputation({
  name: 'arm-lengths',
  title: 'Ratio from the arm lengths',
  summary: 'Ratio of a rocker in the hand, from its two arms between centres, and each nominal against it.',
  words: ['off the engine', 'in the hand', 'tip to cup', 'centre to centre', 'identify', 'caliper', 'rocker'],
  input,
  output,
  equation: 'R = T/C; u_R² = (u_T/C)² + (R·u_C/C)², u = error limit/√3; interval R ± 1.96·u_R',
  tex: 'R=\\frac{T}{C},\\qquad u_R^2=\\left(\\frac{u_T}{C}\\right)^2+\\left(\\frac{R\\,u_C}{C}\\right)^2,\\qquad u=\\frac{a}{\\sqrt 3},\\qquad R\\pm 1.96\\,u_R',
  source:
    'JCGM 100:2008, 4.3.7 and 5.1.2; the lever’s ratio is its arms’, common practice, no published source',
  validity: 'errors small against the lengths, read independently of each other; off the engine',
  assumptions: () => [
    'both lengths run from centre to centre: pivot to roller, pivot to the ball seated in its cup',
    'the ratio of the arms is that of the geometry at mid-lift, not the ratio on the engine',
    'error limits: anywhere within them alike, and the two lengths read independently of each other',
  ],
  cautions: () => [
    'Arm lengths can tell nominals apart; they settle no dispute. Valve lift over lobe lift on a light spring does.',
  ],
  example: {
    inputs: {
      pivotToTip: { value: inch(1.48), errorLimit: inch(0.005) },
      pivotToCup: { value: inch(0.925), errorLimit: inch(0.005) },
      nominals: [1.5, 1.6],
    },
    // (.005/√3)/.925·√(1 + 1.6²), and 1.959964 of it.
    result: {
      ratio: 1.6,
      standardUncertainty: 0.005888336806619168,
      interval95: [1.588459071930185, 1.6115409280698152],
      nominals: [
        { ratio: 1.5, verdict: 'differs', needsPivotToCup: inch(1.48 / 1.5) },
        { ratio: 1.6, verdict: 'agrees', needsPivotToCup: inch(0.925) },
      ],
    },
  },
  headline: () => ['ratio'],
  compute: armLengths,
});
