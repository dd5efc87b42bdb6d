import { computation } from '../../../server/mechanics/computations/lobe-profile.ts';
import { deg, inches } from './quantities.ts';
import { runner } from './runner.ts';

export const { registered, run, number, numbers, refused } = runner(computation);

export const RAD = Math.PI / 180;

export type Pair = readonly [lift: number, duration: number];

export const body = (
  lobeLift: number,
  durations: readonly Pair[],
  angles: readonly number[],
  more: object = {},
) => ({
  lobeLift: inches(lobeLift),
  centreline: deg(106),
  side: 'intake',
  durations: durations.map(([lift, duration]) => ({ atLift: inches(lift), duration: deg(duration) })),
  crankAngles: { values: angles, unit: 'deg' },
  ...more,
});

export const liftAt = (given: object, angle: number): number =>
  number({ ...given, crankAngles: [deg(angle)] }, 'lifts.0');

export const CARD: readonly Pair[] = [
  [0.006, 280],
  [0.05, 230],
  [0.2, 148],
];
