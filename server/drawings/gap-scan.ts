import { levelAxis, PLOT, scaleOver, uprightAxis } from './axes.ts';
import { curve, type Point } from './curve.ts';
import type { Drawing, DrawnFor } from './drawing.ts';
import { at, circle, label, path } from './svg.ts';

interface GapScan {
  /** Crank degrees after TDC and gap in inches, in rising crank angle. */
  readonly readings: readonly Point[];
  readonly least: number;
  readonly atCrankAngle: number;
  readonly limit: number;
  /** The parabola: between which crank angles, and how fast it bends [in/deg²]; none at an edge. */
  readonly fit?: { readonly from: number; readonly to: number; readonly bend: number };
}

/** Points past this many would only blacken the sheet; the table has them all. */
const MOST_MARKS = 60;
const PIECES = 40;

/** The parabola over its stretch, from its least up. */
function parabola({ least, atCrankAngle, fit }: GapScan): Point[] {
  if (fit === undefined) return [];
  return Array.from({ length: PIECES + 1 }, (_, piece): Point => {
    const angle = fit.from + ((fit.to - fit.from) * piece) / PIECES;
    return [angle, least + fit.bend * (angle - atCrankAngle) ** 2];
  });
}

/** The readings of a scan over the crank, the parabola through the least of them, its least and the limit. */
export function gapScan(data: GapScan, { id, ruler }: DrawnFor): Drawing {
  const { readings, least, atCrankAngle, limit } = data;
  const plot = PLOT;
  const x = scaleOver(
    readings.map(([angle]) => angle),
    [plot.left, plot.right],
  );
  const y = scaleOver(
    [...readings.map(([, gap]) => gap), least, limit, 0].map((inches) => ruler.of(inches)),
    [plot.bottom, plot.top],
  );
  const place = ([angle, gap]: Point): Point => [x(angle), y(ruler.of(gap))];
  const [leastX, leastY] = place([atCrankAngle, least]);
  const limitY = y(ruler.of(limit));
  const text = ruler.text(least);
  const where = `${Number(Math.abs(atCrankAngle).toFixed(1))}° ${atCrankAngle < 0 ? 'before' : 'after'} TDC`;
  return {
    id,
    title: 'Gap over the crank',
    desc: `The least gap is ${text} at ${where}. The limit is ${ruler.text(limit)}.`,
    viewBox: '0 0 320 262',
    svg:
      uprightAxis(y, plot, `gap, ${ruler.unit}`) +
      levelAxis(x, plot, 'crank degrees after TDC') +
      path('draw-limit', `M${at(plot.left)} ${at(limitY)}H${at(plot.right)}`) +
      (data.fit === undefined ? '' : curve('draw-moving', parabola(data).map(place))) +
      readings
        .slice(0, MOST_MARKS)
        .map((reading) => circle('draw-outline', ...place(reading), 3))
        .join('') +
      circle('draw-point', leastX, leastY, 3.5) +
      label(12, 254, `dashed: limit ${ruler.text(limit)}`) +
      // Beside the curve it would stand on the limit's line where the two are near.
      label(plot.right, 254, `least ${text}`, { anchor: 'end', className: 'draw-text-strong' }),
    toScale: true,
    table: {
      caption: 'Gaps of the scan, in order of the crank',
      columns: [
        { label: 'Crank degrees after TDC', number: true },
        { label: `Gap, ${ruler.unit}`, number: true },
      ],
      rows: readings.map(([angle, gap]) => ({
        cells: [String(Number(angle.toFixed(3))), ruler.figure(gap)],
      })),
    },
  };
}
