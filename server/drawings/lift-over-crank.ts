import { levelAxis, PLOT, scaleOver, uprightAxis } from './axes.ts';
import { curve, type Point } from './curve.ts';
import type { Drawing, DrawnFor } from './drawing.ts';
import { circle, label } from './svg.ts';

interface OverCrank {
  readonly title: string;
  readonly what: string;
  /** The whole curve, close points: crank degrees and inches. */
  readonly points: readonly Point[];
  /** The angles that were asked for. */
  readonly asked: readonly Point[];
  /** Downward, where it is a depth. */
  readonly down?: boolean;
  readonly desc: string;
  /** What the angle is; left out, crank degrees after TDC. */
  readonly over?: string;
}

/** Points past this many would only blacken the curve; the table has them all. */
const MOST_MARKS = 60;

/** A length over the crank angle, with the asked angles marked: the lift of a lobe, the drop of a piston. */
export function overCrank(data: OverCrank, { id, ruler }: DrawnFor): Drawing {
  const plot = PLOT;
  const over = data.over ?? 'crank degrees after TDC';
  const all = [...data.points, ...data.asked];
  const x = scaleOver(
    all.map(([angle]) => angle),
    [plot.left, plot.right],
  );
  const y = scaleOver(
    [0, ...all.map(([, value]) => ruler.of(value))],
    data.down ? [plot.top, plot.bottom] : [plot.bottom, plot.top],
  );
  const place = ([angle, value]: Point): Point => [x(angle), y(ruler.of(value))];
  const marks = data.asked.slice(0, MOST_MARKS).map((point) => circle('draw-point', ...place(point), 3.5));
  const top = data.asked.reduce<Point | undefined>(
    (best, each) => (best === undefined || each[1] > best[1] ? each : best),
    undefined,
  );
  const named = top === undefined ? '' : nameOf(place(top), ruler.text(top[1]), data.down === true);
  return {
    id,
    title: data.title,
    desc: data.desc,
    viewBox: '0 0 320 238',
    svg:
      uprightAxis(y, plot, `${data.what}, ${ruler.unit}`) +
      levelAxis(x, plot, over) +
      curve('draw-moving', data.points.map(place)) +
      marks.join('') +
      named,
    toScale: true,
    table: {
      caption: data.title,
      columns: [
        { label: over.charAt(0).toUpperCase() + over.slice(1) },
        { label: `${data.what}, ${ruler.unit}`, number: true },
      ],
      rows: data.asked.map(([angle, value]) => ({
        cells: [String(Number(angle.toFixed(3))), ruler.figure(value)],
      })),
    },
  };
}

function nameOf([x, y]: Point, text: string, down: boolean): string {
  const anchor = x > 240 ? 'end' : x < 110 ? 'start' : 'middle';
  return label(x, down ? y - 9 : y - 8, text, { anchor, className: 'draw-text-strong' });
}
