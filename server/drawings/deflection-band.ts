import { levelAxis, type Plot, scaleOver } from './axes.ts';
import type { Drawing, DrawnFor } from './drawing.ts';
import { at, circle, label, path } from './svg.ts';

interface DeflectionBand {
  readonly deflection: number;
  readonly usual: { readonly from: number; readonly to: number };
  /** The 95 % interval, where there is one. */
  readonly interval?: readonly [low: number, high: number] | undefined;
}

const PLOT: Plot = { left: 22, right: 298, top: 34, bottom: 96 };
const LEVEL = 65;

/** The deflection on a scale with the usual band. */
export function deflectionBand(data: DeflectionBand, { id, ruler }: DrawnFor): Drawing {
  const { deflection, usual, interval = [deflection, deflection] } = data;
  const x = scaleOver(
    [0, usual.to, ...interval].map((inches) => ruler.of(inches)),
    [PLOT.left, PLOT.right],
  );
  const place = (inches: number) => x(ruler.of(inches));
  const [from, to] = [place(usual.from), place(usual.to)];
  const [low, high] = [place(interval[0]), place(interval[1])];
  const here = place(deflection);
  const text = ruler.text(deflection);
  const band = `${ruler.figure(usual.from)} to ${ruler.text(usual.to)}`;
  const anchor = here > 230 ? 'end' : here < 90 ? 'start' : 'middle';
  return {
    id,
    title: 'Deflection against what is usual',
    desc: `The running spring takes ${text} off the lift; ${band} is usual.`,
    viewBox: '0 0 320 160',
    svg:
      path('draw-cut', `M${at(from)} 46H${at(to)}V84H${at(from)}Z`) +
      levelAxis(x, PLOT, `deflection at the valve, ${ruler.unit}`) +
      (high > low
        ? path('draw-moving', `M${at(low)} ${LEVEL}H${at(high)}M${at(low)} 59v12M${at(high)} 59v12`)
        : '') +
      circle('draw-point', here, LEVEL, 4) +
      label(here, 30, text, { anchor, className: 'draw-text-strong' }) +
      label(PLOT.left, 152, `hatched: usual, ${band}`, { soft: true }),
    toScale: true,
    table: {
      caption: 'Deflection at the valve',
      columns: [{ label: 'What' }, { label: `Length, ${ruler.unit}`, number: true }],
      rows: [
        { cells: ['Deflection', ruler.figure(deflection)] },
        { cells: ['Usual, from', ruler.figure(usual.from)] },
        { cells: ['Usual, to', ruler.figure(usual.to)] },
      ],
    },
  };
}
