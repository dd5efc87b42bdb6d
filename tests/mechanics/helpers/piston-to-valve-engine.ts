import { computation } from '../../../server/mechanics/computations/piston-to-valve.ts';
import { motionLaw } from '../../../server/mechanics/motion-laws/motion-law.ts';
import { deg, inches } from './quantities.ts';
import { runner } from './runner.ts';

export const { registered, run, number, numbers, refused } = runner(computation);

export const law = motionLaw('4-5-6-7');

export const RAD = Math.PI / 180;

export const profile = (lobeLift: number, centreline: number, seat: number) => ({
  lobeLift: inches(lobeLift),
  centreline: deg(centreline),
  durations: [{ atLift: inches(0), duration: deg(seat) }],
});

const engine = {
  stroke: inches(3.48),
  rodLength: inches(5.7),
  valveAngle: deg(23),
  floor: 'pocket',
  closedGapAtTdc: inches(0.42),
  side: 'intake',
  ratio: 1,
};

export const body = (more: object = {}) => ({ ...engine, profile: profile(0.5, 106, 280), ...more });

/** The same lobe as readings: lift .500·s4567(1 − |θ − 106|/140) every so many degrees. */
export const readings = (from: number, to: number, step: number, ratio = 1) =>
  Array.from({ length: Math.round((to - from) / step) + 1 }, (_, index) => {
    const angle = from + index * step;
    const share = Math.max(0, 1 - Math.abs(angle - 106) / 140);
    return { crankAngle: deg(angle), lift: inches((0.5 * law.at(share).s) / ratio) };
  });

export const gapAt = (given: object, angle: number): number => {
  const angles = numbers(given, 'curve', 'crankAngle');
  const index = angles.findIndex((each) => Math.abs(each - angle) < 1e-9);
  return numbers(given, 'curve', 'gap')[index] ?? Number.NaN;
};
