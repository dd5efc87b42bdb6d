import type { TableData } from '../../views/parts/table.examples.ts';
import { levelAxis, PLOT, scaleOver, uprightAxis } from './axes.ts';
import { curve, type Point } from './curve.ts';
import type { Drawing, DrawnFor } from './drawing.ts';
import { at, circle, label, path } from './svg.ts';

interface PistonToValve {
  readonly side: 'intake' | 'exhaust';
  /** Crank degrees after TDC; depth below the closed valve, along it, of the piston and of the valve [in]. */
  readonly stations: readonly {
    readonly crankAngle: number;
    readonly piston: number;
    readonly valve: number;
  }[];
  readonly margin: number;
  readonly limit: number;
  readonly atCrankAngle: number;
}

type Station = PistonToValve['stations'][number];

/** Crank degrees to each side of top dead centre or of the least gap that are worth a look. */
const WINDOW = 50;

function between(stations: readonly Station[], angle: number): Station {
  const after = Math.max(
    1,
    stations.findIndex((each) => each.crankAngle >= angle),
  );
  const [low, high] = [stations[after - 1], stations[after]];
  if (low === undefined || high === undefined) throw new RangeError('a gap needs two stations at least');
  const part = (angle - low.crankAngle) / (high.crankAngle - low.crankAngle);
  const mix = (a: number, b: number) => a + (b - a) * Math.min(1, Math.max(0, part));
  return { crankAngle: angle, piston: mix(low.piston, high.piston), valve: mix(low.valve, high.valve) };
}

/** Curves that run below the sheet are cut where they leave it. */
function within(stations: readonly Station[], of: (station: Station) => number, deepest: number) {
  const runs: Station[][] = [[]];
  for (const station of stations) {
    if (of(station) <= deepest) runs.at(-1)?.push(station);
    else if ((runs.at(-1)?.length ?? 0) > 0) runs.push([]);
  }
  return runs.filter((run) => run.length > 1);
}

/** The least gap as an upright between the two curves, with its figure beside it. */
function leastDrawn(gapX: number, [valveY, pistonY]: readonly [number, number], text: string): string {
  const onRight = gapX < 190;
  return (
    path('draw-gap', `M${at(gapX)} ${at(valveY)}V${at(pistonY)}`) +
    circle('draw-point', gapX, valveY, 3.5) +
    circle('draw-point', gapX, pistonY, 3.5) +
    label(onRight ? gapX + 8 : gapX - 8, leastAt(valveY, pistonY), `least ${text}`, {
      anchor: onRight ? 'start' : 'end',
      className: 'draw-text-strong',
    })
  );
}

/** Every ten degrees of the crank, and the least. */
function depthsTable(
  { margin }: PistonToValve,
  stations: readonly Station[],
  least: Station,
  { unit, figure }: DrawnFor['ruler'],
): TableData {
  return {
    caption: 'Depth below the closed valve, along it',
    columns: [
      { label: 'Crank, degrees after TDC' },
      { label: `Valve, ${unit}`, number: true },
      { label: `Piston, ${unit}`, number: true },
      { label: `Gap, ${unit}`, number: true },
    ],
    rows: [...stations.filter(({ crankAngle }) => crankAngle % 10 === 0), least]
      .sort((a, b) => a.crankAngle - b.crankAngle)
      .map((each) => ({
        cells: [
          each === least ? `${each.crankAngle.toFixed(1)}, the least` : String(each.crankAngle),
          figure(each.valve),
          figure(each.piston),
          each === least ? figure(margin) : figure(each.piston - each.valve),
        ],
      })),
  };
}

/** Valve and piston over the crank angle, both as depth below the closed valve: the gap is what lies between. */
export function pistonToValve(data: PistonToValve, { id, ruler }: DrawnFor): Drawing | undefined {
  const low = Math.min(0, data.atCrankAngle) - WINDOW;
  const high = Math.max(0, data.atCrankAngle) + WINDOW;
  const stations = data.stations.filter(({ crankAngle }) => crankAngle >= low && crankAngle <= high);
  if (stations.length < 2) return undefined;
  const least = between(data.stations, data.atCrankAngle);
  const deepest =
    Math.max(least.piston, least.valve + data.limit, ...stations.map(({ valve }) => valve)) * 1.12;
  const plot = { ...PLOT, bottom: 206 };
  const x = scaleOver(
    stations.map(({ crankAngle }) => crankAngle),
    [plot.left, plot.right],
  );
  const y = scaleOver([0, ruler.of(deepest)], [plot.top, plot.bottom]);
  const depth = (inches: number) => y(ruler.of(inches));
  const bottom = y.domain()[1] ?? 0;
  const draw = (className: string, of: (station: Station) => number) =>
    within(stations, of, ruler.unit === 'in' ? bottom : bottom / 25.4)
      .map((run) =>
        curve(
          className,
          run.map((each): Point => [x(each.crankAngle), depth(of(each))]),
        ),
      )
      .join('');
  const text = ruler.text(data.margin);
  const limit = ruler.text(data.limit);
  const where = `${Math.abs(data.atCrankAngle).toFixed(1)}° ${data.atCrankAngle < 0 ? 'before' : 'after'} TDC`;
  return {
    id,
    title: `Piston to valve, ${data.side}`,
    desc: `The least gap is ${text} at ${where}. The limit is ${limit}.`,
    viewBox: '0 0 320 266',
    svg:
      uprightAxis(y, plot, `below the closed valve, ${ruler.unit}`) +
      levelAxis(x, plot, 'crank degrees after TDC') +
      path('draw-centre', `M${at(x(0))} ${at(plot.top)}V${at(plot.bottom)}`) +
      draw('draw-limit', ({ valve }) => valve + data.limit) +
      draw('draw-curve', ({ piston }) => piston) +
      draw('draw-moving', ({ valve }) => valve) +
      leastDrawn(x(data.atCrankAngle), [depth(least.valve), depth(least.piston)], text) +
      label(plot.left, 257, `dashed: limit ${limit} below the valve`) +
      nameCurves(stations, least, { x, y: depth, deepest }),
    toScale: true,
    caption: `Valve and piston about top dead centre, ${data.side}`,
    table: depthsTable(data, stations, least, ruler),
  };
}

/** The figure stands beside the middle of a gap that is tall enough for it, above one that is not. */
function leastAt(valveY: number, pistonY: number): number {
  return Math.abs(pistonY - valveY) > 26 ? (valveY + pistonY) / 2 + 4 : Math.min(valveY, pistonY) - 9;
}

/** Names stand on their curves, away from the least gap. */
function nameCurves(
  stations: readonly Station[],
  least: Station,
  scales: { x: (angle: number) => number; y: (inches: number) => number; deepest: number },
): string {
  const right = least.crankAngle < 0;
  const seen = stations.filter(({ piston }) => piston < scales.deepest * 0.8);
  const end = (right ? seen.at(-1) : seen[0]) ?? least;
  const other = (right ? stations[0] : stations.at(-1)) ?? least;
  const anchor = right ? 'start' : 'end';
  return (
    label(scales.x(end.crankAngle) + (right ? 6 : -6), scales.y(end.piston) + 4, 'piston', { anchor }) +
    label(
      scales.x(other.crankAngle) + (right ? 4 : -4),
      scales.y(other.valve) + (other.valve > scales.deepest * 0.2 ? -8 : 16),
      'valve',
      {
        anchor: right ? 'start' : 'end',
        className: 'draw-text-moving',
      },
    )
  );
}
