import type { Value } from './grow.ts';

const VALUES = [16.2, 15.8, 16.4, 15.9, 16.1, 15.7, 16.3, 16];
const inch = (value: number) => ({ value, unit: 'in' });
const deg = (value: number) => ({ value, unit: 'deg' });

/** Inputs with the lists that a computation's worked example does without. The numbers are invented. */
export const OTHER_INPUTS: Readonly<Record<string, readonly Value[]>> = {
  capability: [{ values: VALUES, lower: 8, upper: 20 }],
  'control-chart': [{ individuals: VALUES, chart: 'individuals' }],
  outliers: [{ values: VALUES, method: 'median-mad' }],
  'explain-readings': [
    {
      nominals: [1.5, 1.6],
      mark: 1.6,
      cardLobeLift: inch(0.348),
      readings: [0.557, 0.5565, 0.5563, 0.556].map((value) => ({ of: 'valve-lift', value: inch(value) })),
      answers: [{ ask: 'read-back', found: false }],
    },
  ],
  'lobe-profile': [
    {
      lobeLift: inch(0.5),
      centreline: deg(106),
      side: 'intake',
      durations: [
        { atLift: inch(0), duration: deg(300) },
        { atLift: inch(0.05), duration: deg(240) },
        { atLift: inch(0.2), duration: deg(160) },
      ],
      crankAngles: [deg(36), deg(106)],
    },
  ],
  'piston-to-valve': [
    {
      stroke: inch(3.48),
      rodLength: inch(5.7),
      valveAngle: deg(23),
      floor: 'pocket',
      closedGapAtTdc: inch(0.42),
      side: 'intake',
      ratio: 1.6,
      profile: {
        lobeLift: inch(0.35),
        centreline: deg(106),
        durations: [
          { atLift: inch(0), duration: deg(300) },
          { atLift: inch(0.05), duration: deg(230) },
          { atLift: inch(0.2), duration: deg(140) },
        ],
      },
    },
  ],
};
