import { curveMonotoneX, line } from 'd3-shape';
import { at, path } from './svg.ts';

export type Point = readonly [number, number];

const round = (value: number) => Number(at(value));
const straight = line<Point>(
  ([x]) => round(x),
  ([, y]) => round(y),
);
const _smooth = line<Point>(
  ([x]) => round(x),
  ([, y]) => round(y),
).curve(curveMonotoneX);

/** A curve through close points; straight pieces between them, as they were calculated. */
export function curve(className: string, points: readonly Point[]): string {
  return path(className, straight([...points]) ?? '');
}
