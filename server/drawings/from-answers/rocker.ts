import { z } from 'zod';
import { deflectionBand } from '../deflection-band.ts';
import { dial } from '../dial.ts';
import { amount, inches } from '../drawing.ts';
import { linkage as drawLinkage } from '../linkage.ts';
import { ratioThroughLift as drawRatio } from '../ratio-through-lift.ts';
import { rockerArms } from '../rocker-arms.ts';
import { standHeight as drawStand } from '../stand-height.ts';
import { sweepPath } from '../sweep-path.ts';
import { draws } from './draws.ts';

const arm = z.object({ value: inches });

export const armLengths = draws(
  z.object({ pivotToTip: arm, pivotToCup: arm }),
  z.object({ ratio: z.number() }),
  ({ pivotToTip, pivotToCup }, { ratio }, drawnFor) =>
    rockerArms({ pivotToTip: pivotToTip.value, pivotToCup: pivotToCup.value, ratio }, drawnFor),
);

export const rollerSweep = draws(
  z.object({ netLift: inches }),
  z.object({
    sweep: amount,
    leastSweep: amount,
    path: z.array(z.object({ lift: amount, across: amount })),
  }),
  ({ netLift }, result, drawnFor) => sweepPath({ netLift, ...result }, drawnFor),
);

export const standHeight = draws(
  z.object({ pivotToTip: inches, rollerRadius: inches.optional() }),
  z.object({
    shim: amount,
    pivotOffset: z.object({ now: amount, wanted: amount }),
    nearest: z.object({ shim: amount, pivotOffset: amount }).optional(),
  }),
  (given, { pivotOffset, ...rest }, drawnFor) => drawStand({ ...given, ...pivotOffset, ...rest }, drawnFor),
);

export const linkage = draws(
  z.object({
    pivotToTip: inches,
    pivotToCup: inches,
    armAngle: z.number(),
    tipAngleClosed: z.number(),
    pushrodLength: inches,
    pushrodAngle: z.number(),
    lifterBoreAngle: z.number(),
    netLift: inches,
  }),
  z.object({
    lobeLift: amount,
    ratioAtLift: z.number(),
    rotation: amount,
    instantaneous: z.array(z.object({ valveLift: amount, ratio: z.number() })),
  }),
  (given, { lobeLift, ratioAtLift, rotation, instantaneous }, drawnFor) => [
    drawLinkage({ ...given, lobeLift, ratioAtLift, rotation: (rotation * Math.PI) / 180 }, drawnFor),
    drawRatio(
      {
        title: 'Instantaneous ratio through the lift',
        over: 'Valve lift',
        points: instantaneous.map(({ valveLift, ratio }) => [valveLift, ratio]),
        whole: { ratio: ratioAtLift, name: 'closed to this lift' },
      },
      { ...drawnFor, id: `${drawnFor.id}-ratio` },
    ),
  ],
);

export const ratioThroughLift = draws(
  z.object({ pairs: z.array(z.object({ lobeLift: inches })) }),
  z.object({ ratio: z.object({ value: z.number() }), segmentRatios: z.array(z.number()) }),
  ({ pairs }, { ratio, segmentRatios }, drawnFor) =>
    segmentRatios.length === 0
      ? undefined
      : drawRatio(
          {
            title: 'Ratio of each step through the lift',
            over: 'Lobe lift, middle of the step',
            points: segmentRatios.map((each, index) => [
              ((pairs[index]?.lobeLift ?? 0) + (pairs[index + 1]?.lobeLift ?? 0)) / 2,
              each,
            ]),
            whole: { ratio: ratio.value, name: 'fit' },
          },
          drawnFor,
        ),
);

export const dialReading = draws(
  z.object({
    graduation: inches,
    perTurn: inches,
    turns: z.number(),
    needle: inches,
    runs: z.enum(['clockwise', 'anticlockwise']).default('clockwise'),
  }),
  z.unknown(),
  (given, _result, drawnFor) => dial(given, drawnFor),
);

export const deflection = draws(
  z.unknown(),
  z.object({
    deflection: amount,
    interval95: z.tuple([amount, amount]).optional(),
    usual: z.object({ from: amount, to: amount }).optional(),
  }),
  (_given, { deflection: off, interval95, usual }, drawnFor) =>
    usual === undefined
      ? undefined
      : deflectionBand({ deflection: off, interval: interval95, usual }, drawnFor),
);
