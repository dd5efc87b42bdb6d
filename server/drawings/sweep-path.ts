import { curve, type Point } from './curve.ts';
import { levelDimension, uprightDimension } from './dimension.ts';
import type { Drawing, DrawnFor } from './drawing.ts';
import { at, circle, label, path } from './svg.ts';

interface SweepPath {
  readonly sweep: number;
  readonly leastSweep: number;
  readonly netLift: number;
  /** Closed to open: valve lift, and how far in from the outermost point. */
  readonly path: readonly { readonly lift: number; readonly across: number }[];
}

const TOP = 52;
const HEIGHT = 150;
const MIDDLE = 160;

/** The way of the roller over the stem's end while the valve opens; across it is drawn larger than along it. */
export function sweepPath(data: SweepPath, { id, ruler }: DrawnFor): Drawing {
  const along = HEIGHT / data.netLift;
  // A sweep is a twentieth of the lift: at one scale it would be a line.
  const widest = Math.max(data.sweep, data.leastSweep);
  const across = widest === 0 ? 0 : 110 / widest;
  const left = MIDDLE - 55;
  const place = ({ lift, across: inward }: SweepPath['path'][number]): Point => [
    left + inward * across,
    TOP + lift * along,
  ];
  const points = data.path.map(place);
  const [first, last] = [points[0] ?? [left, TOP], points.at(-1) ?? [left, TOP]];
  const text = ruler.text(data.sweep);
  const times = across / along;
  return {
    id,
    title: 'Way of the roller across the stem',
    desc: `Through a lift of ${ruler.text(data.netLift)} the roller sweeps ${text} across; the least this lift can have on this arm is ${ruler.text(data.leastSweep)}.`,
    viewBox: '0 0 320 250',
    svg:
      path(
        'draw-behind',
        `M${at(left)} ${TOP - 14}V${at(TOP + HEIGHT + 20)}M${at(left + data.sweep * across)} ${TOP - 14}V${at(TOP + HEIGHT + 20)}`,
      ) +
      levelDimension({ y: 28, from: left, to: left + data.sweep * across, text, outline: TOP - 12 }) +
      uprightDimension({
        x: 262,
        from: TOP,
        to: TOP + HEIGHT,
        text: ruler.figure(data.netLift),
        outline: left + 60 + 55,
        side: 'start',
      }) +
      curve('draw-moving', points) +
      circle('draw-point', first[0], first[1], 4) +
      circle('draw-point', last[0], last[1], 4) +
      label(Math.min(first[0], 200) - 10, first[1] + 4, 'closed', { anchor: 'end' }) +
      label(Math.min(last[0], 200) - 10, last[1] + 4, 'open', { anchor: 'end' }) +
      label(MIDDLE, 240, `least ${ruler.text(data.leastSweep)}`, { anchor: 'middle' }),
    toScale: false,
    caption: `Roller across the stem, sideways drawn ${times >= 10 ? times.toFixed(0) : times.toFixed(1)} times larger`,
    table: {
      caption: 'Roller across the stem',
      columns: [
        { label: `Valve lift, ${ruler.unit}` },
        { label: `In from the outermost point, ${ruler.unit}`, number: true },
      ],
      rows: data.path.map(({ lift, across: inward }) => ({
        cells: [
          ruler.figure(lift),
          ruler
            .of(inward)
            .toFixed(4)
            .replace(/^0\./, ruler.unit === 'in' ? '.' : '0.'),
        ],
      })),
    },
  };
}
