import { formatNumber } from '../../shared/quantities/format.ts';
import { levelAxis, PLOT, scaleOver, uprightAxis } from './axes.ts';
import { curve, type Point } from './curve.ts';
import type { Drawing, DrawnFor } from './drawing.ts';
import { at, circle, label, path } from './svg.ts';

interface RatioThroughLift {
  readonly title: string;
  readonly over: string;
  /** Lift [in] and the ratio there. */
  readonly points: readonly Point[];
  /** The one ratio for the whole lift, drawn as a ruled line with its name. */
  readonly whole: { readonly ratio: number; readonly name: string };
}

/** How the ratio goes through the lift, against the one ratio of the whole lift. */
export function ratioThroughLift(data: RatioThroughLift, { id, ruler }: DrawnFor): Drawing {
  const plot = PLOT;
  const x = scaleOver([0, ...data.points.map(([lift]) => ruler.of(lift))], [plot.left, plot.right]);
  const y = scaleOver([data.whole.ratio, ...data.points.map(([, ratio]) => ratio)], [plot.bottom, plot.top]);
  const place = ([lift, ratio]: Point): Point => [x(ruler.of(lift)), y(ratio)];
  const wholeY = y(data.whole.ratio);
  const last = data.points.at(-1);
  const [first] = data.points;
  if (last === undefined || first === undefined) throw new RangeError('a curve needs points');
  const name = `${data.whole.name} ${formatNumber(data.whole.ratio, 3)}`;
  const [lastX, lastY] = place(last);
  const falls = last[1] < first[1];
  return {
    id,
    title: data.title,
    desc: `The ratio goes from ${formatNumber(first[1], 3)} to ${formatNumber(last[1], 3)} through the lift; ${name}.`,
    viewBox: '0 0 320 238',
    svg:
      uprightAxis(y, plot, 'ratio') +
      levelAxis(x, plot, `${data.over}, ${ruler.unit}`) +
      path('draw-limit', `M${at(plot.left)} ${at(wholeY)}H${at(plot.right)}`) +
      label(plot.left + 4, wholeY + (falls ? 16 : -6), name) +
      curve('draw-moving', data.points.map(place)) +
      (data.points.length <= 40
        ? data.points.map((point) => circle('draw-point', ...place(point), 2.5)).join('')
        : '') +
      label(lastX, falls ? lastY + 18 : lastY - 9, formatNumber(last[1], 3), {
        anchor: 'end',
        className: 'draw-text-strong',
      }),
    toScale: true,
    table: {
      caption: data.title,
      columns: [{ label: `${data.over}, ${ruler.unit}` }, { label: 'Ratio', number: true }],
      rows: data.points.map(([lift, ratio]) => ({ cells: [ruler.figure(lift), formatNumber(ratio, 4)] })),
    },
  };
}
