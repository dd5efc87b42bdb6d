import { RAD } from './derived.ts';
import { deg, inch } from './forms.ts';

type Point = readonly [x: number, y: number];
const dot = ([a, b]: Point, [c, d]: Point) => a * c + b * d;
const less = ([a, b]: Point, [c, d]: Point): Point => [a - c, b - d];
const from = (angle: number): Point => [Math.sin(angle), Math.cos(angle)];

const [b, a, beta, phi0, rod, p, q] = [1.55, 0.98, 158 * RAD, 11 * RAD, 7.65, 9 * RAD, 6.5 * RAD];

export const linkageBody = (netLift: number) => ({
  pivotToTip: inch(b),
  pivotToCup: inch(a),
  armAngle: deg(158),
  tipAngleClosed: deg(11),
  pushrodLength: inch(rod),
  pushrodAngle: deg(9),
  lifterBoreAngle: deg(6.5),
  netLift: inch(netLift),
});

export const rotationFor = (lift: number): number => (phi0 - Math.asin(Math.sin(phi0) - lift / b)) / RAD;
export const valveLiftAt = (rotation: number): number =>
  b * (Math.sin(phi0) - Math.sin(phi0 - rotation * RAD));

const cupAt = (rotation: number): Point => {
  const angle = phi0 + beta - rotation * RAD;
  return [a * Math.cos(angle), a * Math.sin(angle)];
};
const closed = cupAt(0);
const lifterClosed: Point = [closed[0] - rod * Math.sin(p), closed[1] - rod * Math.cos(p)];

/** Lifter travel up its bore: where a circle of the pushrod's length about the cup cuts the bore's line, by its roots. */
export function lobeLiftAt(rotation: number): number {
  const toCup = less(cupAt(rotation), lifterClosed);
  const half = dot(toCup, from(q));
  return half - Math.sqrt(half ** 2 - (dot(toCup, toCup) - rod ** 2));
}

/** b·cosφ·cosψ/(a·cosδ), with δ and ψ measured on the drawn parts. */
export function ratioAt(rotation: number): number {
  const cup = cupAt(rotation);
  const lift = lobeLiftAt(rotation);
  const [upX, upY] = from(q);
  const lifter: Point = [lifterClosed[0] + lift * upX, lifterClosed[1] + lift * upY];
  const [x, y] = less(cup, lifter);
  const rodWay: Point = [x / rod, y / rod];
  // The rocker opens clockwise: the cup at (x, y) moves along (y, −x).
  const cupWay: Point = [cup[1] / a, -cup[0] / a];
  const [cosDelta, cosPsi] = [dot(cupWay, rodWay), dot(rodWay, from(q))];
  return (b * Math.cos(phi0 - rotation * RAD) * cosPsi) / (a * cosDelta);
}
