import { RAD } from './derived.ts';
import { drop } from './derived-motion.ts';
import { deg, inch } from './forms.ts';

const [stroke, rod, gamma, c0, centre, seat] = [3.48, 5.7, 23, 0.42, 108, 280];
const [lobe, ratio, lash, advance] = [0.3, 1.7, 0.01, 4];

export const clearanceBody = (floor: 'pocket' | 'flat', e: number) => ({
  stroke: inch(stroke),
  rodLength: inch(rod),
  pinOffset: inch(e),
  valveAngle: deg(gamma),
  floor,
  closedGapAtTdc: inch(c0),
  side: 'intake',
  profile: {
    lobeLift: inch(lobe),
    centreline: deg(centre),
    durations: [{ atLift: inch(0), duration: deg(seat) }],
  },
  ratio,
  lash: inch(lash),
  advance: deg(advance),
});

/** Angles here are from true top; the plain formula counts from where the throw lies along the bore. */
const dropAt = (e: number, angle: number) =>
  drop(stroke, rod, e, angle + Math.asin(e / (rod + stroke / 2)) / RAD);

const lift = (angle: number) => {
  const u = Math.max(0, 1 - Math.abs(angle - centre + advance) / (seat / 2));
  return Math.max(0, ratio * lobe * u ** 4 * (35 - 84 * u + 70 * u ** 2 - 20 * u ** 3) - lash);
};

export const gapAt = (floor: 'pocket' | 'flat', e: number, angle: number): number => {
  const cosine = Math.cos(gamma * RAD);
  return c0 + dropAt(e, angle) * (floor === 'pocket' ? cosine : 1 / cosine) - lift(angle);
};
export const shiftAt = (e: number, angle: number): number => dropAt(e, angle) * Math.sin(gamma * RAD);

/** The least gap of a fine scan, then by thirds. */
export function leastGap(floor: 'pocket' | 'flat', e: number): { angle: number; gap: number } {
  const gap = (angle: number) => gapAt(floor, e, angle);
  const angles = Array.from({ length: 24_001 }, (_, index) => -60 + index / 200);
  const best = angles.reduce((least, angle) => (gap(angle) < gap(least) ? angle : least), 0);
  let [low, high] = [best - 0.01, best + 0.01];
  for (let step = 0; step < 100; step += 1) {
    const [first, second] = [low + (high - low) / 3, high - (high - low) / 3];
    if (gap(first) <= gap(second)) high = second;
    else low = first;
  }
  return { angle: (low + high) / 2, gap: gap((low + high) / 2) };
}
