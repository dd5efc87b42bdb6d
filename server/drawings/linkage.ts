import { formatNumber } from '../../shared/quantities/format.ts';
import type { Drawing, DrawnFor } from './drawing.ts';
import { at, circle, label, path } from './svg.ts';

/** Lengths in inches, angles in radians; axes and signs as the computation has them. */
interface Linkage {
  readonly pivotToTip: number;
  readonly pivotToCup: number;
  readonly armAngle: number;
  readonly tipAngleClosed: number;
  readonly pushrodLength: number;
  readonly pushrodAngle: number;
  readonly lifterBoreAngle: number;
  readonly netLift: number;
  readonly lobeLift: number;
  readonly rotation: number;
  readonly ratioAtLift: number;
}

type Spot = readonly [number, number];

const polar = (length: number, angle: number): Spot => [length * Math.cos(angle), length * Math.sin(angle)];
const along = (from: Spot, toward: Spot, part: number): Spot => [
  from[0] + (toward[0] - from[0]) * part,
  from[1] + (toward[1] - from[1]) * part,
];

interface State {
  readonly tip: Spot;
  readonly cup: Spot;
  readonly lifter: Spot;
}

function stateAt(data: Linkage, rotation: number, lobeLift: number): State {
  const closedCup = polar(data.pivotToCup, data.tipAngleClosed + data.armAngle);
  return {
    tip: polar(data.pivotToTip, data.tipAngleClosed - rotation),
    cup: polar(data.pivotToCup, data.tipAngleClosed + data.armAngle - rotation),
    lifter: [
      closedCup[0] -
        data.pushrodLength * Math.sin(data.pushrodAngle) +
        lobeLift * Math.sin(data.lifterBoreAngle),
      closedCup[1] -
        data.pushrodLength * Math.cos(data.pushrodAngle) +
        lobeLift * Math.cos(data.lifterBoreAngle),
    ],
  };
}

/** Part of the pushrod that is drawn: all of it would leave the rocker too small to read. */
function shownPart(data: Linkage): number {
  return Math.min(1, (1.1 * Math.max(data.pivotToTip, data.pivotToCup)) / data.pushrodLength);
}

/** The rocker closed and at full lift about its pivot, in one plane, with the upper end of its pushrod. */
export function linkage(data: Linkage, { id, ruler }: DrawnFor): Drawing {
  const part = shownPart(data);
  const states = [stateAt(data, 0, 0), stateAt(data, data.rotation, data.lobeLift)] as const;
  const spots: Spot[] = [
    [0, 0],
    ...states.flatMap(({ tip, cup, lifter }): Spot[] => [tip, cup, along(cup, lifter, part)]),
  ];
  const xs = spots.map(([x]) => x);
  const ys = spots.map(([, y]) => y);
  const [width, height] = [Math.max(...xs) - Math.min(...xs), Math.max(...ys) - Math.min(...ys)];
  const scale = Math.min(236 / Math.max(width, 1e-9), 190 / Math.max(height, 1e-9));
  const place = ([x, y]: Spot): Spot => [
    160 + (x - (Math.max(...xs) + Math.min(...xs)) / 2) * scale,
    30 + (Math.max(...ys) - y) * scale,
  ];
  const pivot = place([0, 0]);
  const drawn = (state: State, className: string) => {
    const [tip, cup, end] = [place(state.tip), place(state.cup), place(along(state.cup, state.lifter, part))];
    return (
      path(
        className,
        `M${at(tip[0])} ${at(tip[1])}L${at(pivot[0])} ${at(pivot[1])}L${at(cup[0])} ${at(cup[1])}L${at(end[0])} ${at(end[1])}`,
      ) +
      circle(className, tip[0], tip[1], 6) +
      circle(className, cup[0], cup[1], 3.5)
    );
  };
  const openTip = place(states[1].tip);
  const right = openTip[0] > 160;
  const ratio = formatNumber(data.ratioAtLift, 3);
  return {
    id,
    title: 'Rocker and pushrod, closed and at full lift',
    desc: `A lobe lift of ${ruler.text(data.lobeLift)} gives a valve lift of ${ruler.text(data.netLift)}: ratio ${ratio} to this lift.`,
    viewBox: '0 0 320 268',
    svg:
      drawn(states[0], 'draw-behind') +
      drawn(states[1], 'draw-moving') +
      circle('draw-outline', pivot[0], pivot[1], 5) +
      label(pivot[0], pivot[1] - 12, 'pivot', { anchor: 'middle' }) +
      label(openTip[0] + (right ? 8 : -8), openTip[1] + 22, `valve ${ruler.figure(data.netLift)}`, {
        anchor: right ? 'end' : 'start',
      }) +
      label(right ? 8 : 312, 248, `lobe ${ruler.text(data.lobeLift)}`, { anchor: right ? 'start' : 'end' }) +
      label(right ? 312 : 8, 248, `ratio ${ratio}`, {
        anchor: right ? 'end' : 'start',
        className: 'draw-text-strong',
      }),
    toScale: true,
    caption:
      part < 1
        ? 'Closed (thin) and at full lift; the pushrod’s lower end is left off'
        : 'Closed (thin) and at full lift',
    table: {
      caption: 'Rocker, closed to full lift',
      columns: [{ label: 'What' }, { label: 'Figure', number: true }],
      rows: [
        { cells: ['Valve lift', ruler.text(data.netLift)] },
        { cells: ['Lobe lift', ruler.text(data.lobeLift)] },
        { cells: ['Ratio to this lift', ratio] },
        { cells: ['Turn of the rocker, degrees', ((data.rotation * 180) / Math.PI).toFixed(2)] },
      ],
    },
  };
}
