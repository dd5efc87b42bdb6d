import type { Drawing } from './drawing.ts';
import { at, circle, label, line, path } from './svg.ts';

/** Angles in degrees, as the computation has them: each counter-clockwise, or leaning toward the valve at the top. */
interface LinkageAngles {
  readonly armAngle: number;
  readonly tipAngleClosed: number;
  readonly pushrodAngle: number;
  readonly lifterBoreAngle: number;
}

/** Drawn apart from one another, so that none is mistaken for the next. */
const DRAWN: LinkageAngles = { armAngle: 145, tipAngleClosed: 16, pushrodAngle: 12, lifterBoreAngle: 30 };

type Spot = readonly [number, number];

const PIVOT: Spot = [176, 96];
const [VALVE_ARM, CUP_ARM, PUSHROD, BORE] = [94, 78, 108, 68];

/** From a spot along an angle from the right, counter-clockwise; the sheet's y goes down. */
const from = ([x, y]: Spot, length: number, degrees: number): Spot => {
  const angle = (degrees * Math.PI) / 180;
  return [x + length * Math.cos(angle), y - length * Math.sin(angle)];
};

const stroke = (className: string, [x1, y1]: Spot, [x2, y2]: Spot) => line(className, x1, y1, x2, y2);

const ROOM_FOR_ARROWS = 24;

/** An angle as engineering drawings dimension it: an arc about its corner, with arrowheads where they have room (ISO 129-1). */
function arc(corner: Spot, radius: number, first: number, second: number): string {
  const [start, end] = [from(corner, radius, first), from(corner, radius, second)];
  const large = Math.abs(second - first) > 180 ? 1 : 0;
  const sweep = second > first ? 0 : 1;
  const long = (Math.abs(second - first) * Math.PI * radius) / 180;
  return path(
    'draw-dim',
    `M${at(start[0])} ${at(start[1])}A${radius} ${radius} 0 ${large} ${sweep} ${at(end[0])} ${at(end[1])}`,
    long < ROOM_FOR_ARROWS ? {} : { 'marker-start': 'url(#arrow)', 'marker-end': 'url(#arrow)' },
  );
}

/** The four angles of the whole linkage, valve shut, before any is known: what each is between. */
export function linkageAsked(id: string, angles: LinkageAngles = DRAWN): Drawing {
  const { armAngle, tipAngleClosed, pushrodAngle, lifterBoreAngle } = angles;
  const tip = from(PIVOT, VALVE_ARM, tipAngleClosed);
  const cup = from(PIVOT, CUP_ARM, tipAngleClosed + armAngle);
  // What leans toward the valve at the top goes away from it on the way down.
  const down = (lean: number) => 270 - lean;
  const lifter = from(cup, PUSHROD, down(pushrodAngle));
  const bore = from(lifter, BORE, down(lifterBoreAngle));
  const square = from(PIVOT, VALVE_ARM + 18, 0);
  return {
    id,
    title: 'The four angles of the linkage',
    desc: 'Valve shut, seen from the side with the valve at the right. Arm angle: from the valve arm round to the cup arm, over the top. Tip angle: the valve arm above square to the valve; below it is negative. Pushrod angle: the pushrod against the valve’s line. Bore angle: the lifter’s bore against the valve’s line. Both lean toward the valve at the top.',
    viewBox: '0 0 320 290',
    svg:
      stroke('draw-centre', [tip[0], tip[1] - 30], [tip[0], 276]) +
      stroke('draw-centre', PIVOT, square) +
      stroke('draw-centre', cup, [cup[0], cup[1] + 92]) +
      stroke('draw-centre', lifter, [lifter[0], lifter[1] + 66]) +
      stroke('draw-behind', lifter, bore) +
      stroke('draw-outline', PIVOT, tip) +
      stroke('draw-outline', PIVOT, cup) +
      stroke('draw-outline', cup, lifter) +
      path('draw-outline', `M${at(tip[0] - 5)} 276V${at(tip[1] + 14)}H${at(tip[0] + 5)}V276`) +
      circle('draw-outline', tip[0], tip[1], 14) +
      circle('draw-outline', cup[0], cup[1], 4) +
      circle('draw-outline', lifter[0], lifter[1], 4) +
      circle('draw-moving', PIVOT[0], PIVOT[1], 6) +
      arc(PIVOT, 44, tipAngleClosed, tipAngleClosed + armAngle) +
      arc(PIVOT, 66, 0, tipAngleClosed) +
      arc(cup, 78, down(pushrodAngle), 270) +
      arc(lifter, 56, down(lifterBoreAngle), 270) +
      label(PIVOT[0], PIVOT[1] - 52, 'arm angle', { anchor: 'middle' }) +
      label(PIVOT[0] + 16, PIVOT[1] + 22, 'tip angle') +
      label(cup[0] + 10, cup[1] + 82, 'pushrod angle') +
      label(lifter[0] + 10, lifter[1] + 58, 'bore angle') +
      label(tip[0] + 10, 262, 'valve', { soft: true }) +
      label(PIVOT[0] - 8, PIVOT[1] + 20, 'pivot', { soft: true, anchor: 'end' }),
    toScale: false,
    caption: 'Valve shut. Chain lines: square to the valve, and the valve’s line carried across',
  };
}
