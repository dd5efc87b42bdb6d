import { z } from 'zod';
import { type InputFault, InputFaults, impossible } from '../../../shared/problems/faults.ts';
import { outNumber } from '../../../shared/schemas/outputs.ts';
import { length } from '../../../shared/schemas/quantity-fields.ts';
import { defineComputation } from '../kit/computation.ts';
import { makerFirst } from '../springs/caution.ts';
import { combine } from '../uncertainty/combine.ts';
import { rectangular } from '../uncertainty/type-b.ts';

const arm = (description: string) =>
  z
    .strictObject({
      value: length('the distance'),
      errorLimit: length('how far off it can be, half-width', { sign: 'not-negative' }),
    })
    .meta({ description });

const place = (when: string) =>
  z
    .strictObject({
      toValve: arm(`pivot to the line in which the valve is pushed, square to that line, ${when}`),
      toCam: arm(`pivot to the line in which the cam pushes, square to that line, ${when}`),
    })
    .meta({ description: `the two arms, ${when}` });

const input = z.strictObject({
  shut: place('valve shut'),
  open: place('valve at full lift').optional(),
});

const ofPlace = z.object({
  ratio: outNumber('valve motion over cam motion at that place'),
  standardUncertainty: outNumber('combined standard uncertainty of the ratio'),
  interval95: z.tuple([z.number(), z.number()]).meta({ description: '95 % interval, low and high' }),
});

const output = z.object({
  shut: ofPlace.meta({ description: 'as the valve begins to move' }),
  open: ofPlace.optional().meta({ description: 'at full lift' }),
  overall: z.tuple([z.number(), z.number()]).optional().meta({
    description:
      'what valve lift over cam lift lies between, if the ratio only rises or only falls on the way',
  }),
});

type Place = z.output<typeof input>['shut'];
type Given = z.output<typeof input>;

const SIDES = ['toValve', 'toCam'] as const;

function faultsOf(name: string, place: Place): InputFault[] {
  return SIDES.filter((side) => place[side].errorLimit >= place[side].value / 2).map((side) => ({
    pointer: `/${name}/${side}/errorLimit`,
    code: 'impossible-input',
    detail: 'is half the distance or more: no ratio can be taken from that',
  }));
}

function ratioAt(name: string, { toValve, toCam }: Place): z.output<typeof ofPlace> {
  const ratio = toValve.value / toCam.value;
  if (ratio > 100) impossible([`/${name}/toValve/value`, `/${name}/toCam/value`], 'give a ratio above 100');
  const { standardUncertainty, expanded } = combine([
    { source: 'pivot to valve', u: rectangular(toValve.errorLimit), sensitivity: 1 / toCam.value },
    { source: 'pivot to cam', u: rectangular(toCam.errorLimit), sensitivity: -ratio / toCam.value },
  ]);
  return { ratio, standardUncertainty, interval95: [ratio - expanded, ratio + expanded] };
}

/**
 * Ratio of a follower or rocker that the cam works directly, from its two arms, valve shut and at full lift.
 *
 * Equation: R = V/C at each place, V and C each square to its line of push; u_R² = (u_V/C)² + (R·u_C/C)²,
 * u = errorLimit/√3; valve lift over cam lift lies between the least and the greatest ratio on the way
 *
 * @param shut [m] toValve, toCam {value, errorLimit}: with the valve shut, above zero; errorLimit below half of it
 * @param open [m] the same at full lift; may be left out
 * @returns shut, open (ratio [1], standardUncertainty [1], interval95 [1]), overall [1] low and high with their intervals
 * @throws impossible-input when an error limit is half its distance or more
 * @throws impossible-input when a ratio comes out above 100
 *
 * Validity: pivot at one end and cam between it and the valve (finger), or pivot between cam and valve; a rigid arm;
 * overall only where the contact moves one way from shut to open.
 * Source: the law of the lever by virtual work, any textbook of mechanics; JCGM 100:2008, 4.3.7 and 5.1.2; the bounds
 * by the mean value theorem.
 */
function followerRatio({ shut, open }: Given): z.output<typeof output> {
  const faults = [...faultsOf('shut', shut), ...(open === undefined ? [] : faultsOf('open', open))];
  if (faults.length > 0) throw new InputFaults(faults);
  const first = ratioAt('shut', shut);
  if (open === undefined) return { shut: first };
  const last = ratioAt('open', open);
  return {
    shut: first,
    open: last,
    overall: [
      Math.min(first.interval95[0], last.interval95[0]),
      Math.max(first.interval95[1], last.interval95[1]),
    ],
  };
}

const mm = (value: number) => ({ value, unit: 'mm' });
const read = (value: number) => ({ value: mm(value), errorLimit: mm(0.3) });

export const computation = defineComputation({
  name: 'follower-ratio',
  title: 'Ratio of a follower under the cam',
  summary:
    'Ratio of a finger follower, or of a rocker on the cam, from its arms: valve shut, at full lift, and between.',
  words: [
    'overhead cam',
    'finger follower',
    'cam follower',
    'rocker on the cam',
    'pivot to tip',
    'pivot to contact',
  ],
  input,
  output,
  equation:
    'R = V/C; u_R² = (u_V/C)² + (R·u_C/C)², u = error limit/√3; least R ≤ valve lift/cam lift ≤ greatest R',
  tex: 'R=\\frac{V}{C},\\qquad u_R^2=\\left(\\frac{u_V}{C}\\right)^2+\\left(\\frac{R\\,u_C}{C}\\right)^2,\\qquad \\min R\\le\\frac{L_\\mathrm{valve}}{L_\\mathrm{cam}}\\le\\max R',
  source:
    'the law of the lever by virtual work, any textbook of mechanics; JCGM 100:2008, 4.3.7 and 5.1.2; the bounds by the mean value theorem',
  validity: 'a rigid arm on a fixed pivot; the contact on the cam moves one way between shut and open',
  assumptions: ({ open }) => [
    'each arm runs from the pivot’s centre, square to the line in which valve or cam pushes',
    'error limits: anywhere within them alike, and the distances read independently of each other',
    ...(open === undefined
      ? ['the ratio is that of the place it was measured at; through the lift it changes']
      : ['the ratio only rises or only falls between the two places']),
  ],
  cautions: () => [
    'Valve lift over cam lift, read on the engine, settles it; the arms only say what to expect.',
    makerFirst,
  ],
  example: {
    inputs: {
      shut: { toValve: read(36), toCam: read(24) },
      open: { toValve: read(35.4), toCam: read(21.9) },
    },
    // 36/24 and 35.4/21.9; (.3/√3)/24·√(1 + 1.5²) and (.3/√3)/21.9·√(1 + R²), 1.959964 of each.
    result: {
      shut: {
        ratio: 1.5,
        standardUncertainty: (0.3 / Math.sqrt(3) / 24) * Math.hypot(1, 1.5),
        interval95: [
          1.5 - 1.959963984540054 * (0.3 / Math.sqrt(3) / 24) * Math.hypot(1, 1.5),
          1.5 + 1.959963984540054 * (0.3 / Math.sqrt(3) / 24) * Math.hypot(1, 1.5),
        ],
      },
      open: {
        ratio: 35.4 / 21.9,
        standardUncertainty: (0.3 / Math.sqrt(3) / 21.9) * Math.hypot(1, 35.4 / 21.9),
        interval95: [
          35.4 / 21.9 - 1.959963984540054 * (0.3 / Math.sqrt(3) / 21.9) * Math.hypot(1, 35.4 / 21.9),
          35.4 / 21.9 + 1.959963984540054 * (0.3 / Math.sqrt(3) / 21.9) * Math.hypot(1, 35.4 / 21.9),
        ],
      },
      overall: [
        1.5 - 1.959963984540054 * (0.3 / Math.sqrt(3) / 24) * Math.hypot(1, 1.5),
        35.4 / 21.9 + 1.959963984540054 * (0.3 / Math.sqrt(3) / 21.9) * Math.hypot(1, 35.4 / 21.9),
      ],
    },
  },
  headline: () => ['shut.ratio'],
  compute: followerRatio,
});
