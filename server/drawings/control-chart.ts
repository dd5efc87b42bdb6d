import { formatNumber } from '../../shared/quantities/format.ts';
import { levelAxis, type Plot, type Scale, scaleOver, uprightAxis } from './axes.ts';
import { curve, type Point } from './curve.ts';
import type { Drawing, DrawnFor } from './drawing.ts';
import { at, circle, label, path } from './svg.ts';

interface ChartBand {
  readonly name: string;
  readonly values: readonly number[];
  readonly centre: number;
  readonly lower: number;
  readonly upper: number;
  /** Indices of points that broke a rule. */
  readonly signals: readonly number[];
  /** Number in the run of the first value: a moving range belongs to the later of its two values. */
  readonly start?: number;
}

const PLOTS: readonly [Plot, Plot] = [
  { left: 46, right: 306, top: 28, bottom: 152 },
  { left: 46, right: 306, top: 214, bottom: 300 },
];

function significant(value: number): string {
  return value === 0
    ? '0'
    : formatNumber(value, Math.max(0, Math.min(9, 3 - Math.floor(Math.log10(Math.abs(value))))));
}

/** A ruled line over the plot with its name and figure standing on it. */
function ruled(y: Scale, plot: Plot, value: number, name: string, className: string, below: boolean): string {
  const where = y(value);
  return (
    path(className, `M${at(plot.left)} ${at(where)}H${at(plot.right)}`) +
    label(
      plot.right,
      where + (below && where < plot.bottom - 16 ? 13 : -4),
      `${name} ${significant(value)}`,
      {
        anchor: 'end',
        soft: true,
      },
    )
  );
}

function bandDrawing(band: ChartBand, plot: Plot): string {
  const start = band.start ?? 0;
  const x = scaleOver([0, Math.max(1, start + band.values.length - 1)], [plot.left + 6, plot.right - 6]);
  const y = scaleOver([...band.values, band.lower, band.upper, band.centre], [plot.bottom, plot.top], 4);
  const points = band.values.map((value, index): Point => [x(start + index), y(value)]);
  const signals = new Set(band.signals);
  const marks = points.map(([px, py], index) =>
    signals.has(start + index)
      ? circle('draw-signal', px, py, 6) + circle('draw-point', px, py, 3)
      : circle('draw-solid', px, py, 2.5),
  );
  return (
    uprightAxis(y, plot, band.name, 4) +
    ruled(y, plot, band.upper, 'upper', 'draw-limit', false) +
    // A range can't be below zero: a limit there lies on the axis and says nothing.
    (band.lower === 0 && y.domain()[0] === 0 ? '' : ruled(y, plot, band.lower, 'lower', 'draw-limit', true)) +
    path('draw-centre', `M${at(plot.left)} ${at(y(band.centre))}H${at(plot.right)}`) +
    label(plot.left + 4, y(band.centre) - 4, `mean ${significant(band.centre)}`, { soft: true }) +
    curve('draw-curve', points) +
    marks.join('') +
    levelAxis(x, plot, plot === PLOTS[0] ? '' : 'number in the run, from 0', { whole: true })
  );
}

function rangeText({ values, start = 0 }: ChartBand, index: number): string {
  const value = values[index - start];
  return value === undefined ? '' : significant(value);
}

/** Means and ranges over the run, each with its limits ruled and named; a point that broke a rule has a ring. */
export function controlChart(mean: ChartBand, range: ChartBand, { id }: DrawnFor): Drawing {
  const broken = [...new Set([...mean.signals, ...range.signals])].sort((a, b) => a - b);
  return {
    id,
    title: 'Control chart',
    desc: `${mean.name}: mean ${significant(mean.centre)}, limits ${significant(mean.lower)} to ${significant(mean.upper)}. ${
      broken.length === 0 ? 'No point breaks a rule.' : `Points that break a rule: ${broken.join(', ')}.`
    }`,
    viewBox: '0 0 320 340',
    svg: bandDrawing(mean, PLOTS[0]) + bandDrawing(range, PLOTS[1]),
    toScale: true,
    table: {
      caption: 'Points of the chart',
      columns: [
        { label: 'Number' },
        { label: mean.name, number: true },
        { label: range.name, number: true },
        { label: 'Rule' },
      ],
      rows: mean.values.map((value, index) => ({
        cells: [
          String(index),
          significant(value),
          rangeText(range, index),
          broken.includes(index) ? 'broken' : '',
        ],
      })),
    },
  };
}
