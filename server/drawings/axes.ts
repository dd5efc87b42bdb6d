import { type ScaleLinear, scaleLinear } from 'd3-scale';
import { formatNumber } from '../../shared/quantities/format.ts';
import { at, label, path } from './svg.ts';

export type Scale = ScaleLinear<number, number>;

/** The part of a 320 wide sheet that a chart's curves stand on; the rest is for names and figures. */
export interface Plot {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

export const PLOT: Plot = { left: 46, right: 306, top: 26, bottom: 196 };

/** A scale that holds all the values, rounded out to figures a person would rule; equal values get room about them. */
export function scaleOver(values: readonly number[], range: readonly [number, number], ticks = 5): Scale {
  const low = Math.min(...values);
  const high = Math.max(...values);
  const room = high > low ? 0 : Math.abs(high) * 0.05 || 1;
  return scaleLinear()
    .domain([low - room, high + room])
    .range([...range])
    .nice(ticks);
}

/** Decimal places that tell the ticks apart. */
function placesOf(ticks: readonly number[]): number {
  const [first = 0, second = 1] = ticks;
  const step = Math.abs(second - first);
  return Math.max(0, Math.min(9, -Math.floor(Math.log10(step) + 1e-9)));
}

const figure = (value: number, ticks: readonly number[]): string =>
  value === 0 ? '0' : formatNumber(value, placesOf(ticks));

/** The level axis: ruled at the bottom of the plot, figures below, its name and unit at the right. */
export function levelAxis(
  scale: Scale,
  plot: Plot,
  name: string,
  options: { readonly wanted?: number; readonly whole?: boolean } = {},
): string {
  const ticks = scale.ticks(options.wanted ?? 5).filter((tick) => !options.whole || Number.isInteger(tick));
  const marks = ticks.map((tick) => `M${at(scale(tick))} ${at(plot.bottom)}v4`).join('');
  const figures = ticks.map((tick) =>
    label(scale(tick), plot.bottom + 17, figure(tick, ticks), { anchor: 'middle', soft: true }),
  );
  return (
    path('draw-axis', `M${at(plot.left)} ${at(plot.bottom)}H${at(plot.right)}${marks}`) +
    figures.join('') +
    label(plot.right, plot.bottom + 34, name, { anchor: 'end', soft: true })
  );
}

/** The upright axis: figures at the left with a hair line each, its name and unit on top. */
export function uprightAxis(scale: Scale, plot: Plot, name: string, wanted = 5): string {
  const ticks = scale.ticks(wanted);
  const rules = ticks.map((tick) => `M${at(plot.left)} ${at(scale(tick))}H${at(plot.right)}`).join('');
  const figures = ticks.map((tick) =>
    label(plot.left - 5, scale(tick) + 4.5, figure(tick, ticks), { anchor: 'end', soft: true }),
  );
  return path('draw-rule', rules) + figures.join('') + label(4, plot.top - 12, name, { soft: true });
}
