import { scaleLinear } from 'd3-scale';
import { formatNumber } from '../../shared/quantities/format.ts';
import { curve, type Point } from './curve.ts';
import { levelDimension } from './dimension.ts';
import type { Drawing, DrawnFor } from './drawing.ts';
import { at, label, line, path } from './svg.ts';

const BOTTOM = 176;
const TALL = 118;
const POINTS = 80;
/** Beyond this many standard deviations the curve lies on its axis. */
const TAILS = 4;

const figure = (value: number): string =>
  formatNumber(Number(value.toPrecision(6)), 4).replace(/\.?0+$/, '') || '0';

/** A limit, its name and its figure. */
const limit = (x: number, name: string, value: number): string =>
  path('draw-limit', `M${at(x)} 44V${BOTTOM}`) +
  label(x, 36, `${name} ${figure(value)}`, { anchor: x < 160 ? 'start' : 'end' });

/** How a lot lies between its limits: the bell of its mean and spread, on the axis of what was measured. */
export function capability(
  data: {
    readonly mean: number;
    readonly s: number;
    readonly lower: number;
    readonly upper: number;
    readonly cp: number;
    readonly cpk: number;
  },
  { id }: DrawnFor,
): Drawing {
  const { mean, s, lower, upper } = data;
  const x = scaleLinear()
    .domain([Math.min(lower, mean - TAILS * s), Math.max(upper, mean + TAILS * s)])
    .range([16, 304]);
  const bell = Array.from({ length: POINTS + 1 }, (_, step): Point => {
    const z = TAILS * (-1 + (2 * step) / POINTS);
    return [x(mean + z * s), BOTTOM - TALL * Math.exp(-(z ** 2) / 2)];
  });
  const nearer = upper - mean < mean - lower ? 'upper' : 'lower';
  return {
    id,
    title: 'The lot between its limits',
    desc: `The mean ${figure(mean)} stands nearer the ${nearer} limit of ${figure(lower)} to ${figure(upper)}; three standard deviations either way reach from ${figure(mean - 3 * s)} to ${figure(mean + 3 * s)}. cp ${formatNumber(data.cp, 2)}, cpk ${formatNumber(data.cpk, 2)}.`,
    viewBox: '0 0 320 254',
    svg:
      line('draw-axis', 16, BOTTOM, 304, BOTTOM) +
      curve('draw-moving', bell) +
      path('draw-centre', `M${at(x(mean))} 52V${BOTTOM + 6}`) +
      limit(x(lower), 'lower', lower) +
      limit(x(upper), 'upper', upper) +
      levelDimension({
        y: 208,
        from: x(mean - 3 * s),
        to: x(mean + 3 * s),
        text: `six s: ${figure(6 * s)}`,
        outline: BOTTOM + 4,
      }) +
      label(x(mean), 232, `mean ${figure(mean)}`, { anchor: 'middle', soft: true }) +
      label(160, 249, `cp ${formatNumber(data.cp, 2)}, cpk ${formatNumber(data.cpk, 2)}`, {
        anchor: 'middle',
        className: 'draw-text-strong',
      }),
    toScale: true,
    caption: 'A normal bell of this mean and spread, between the limits',
    table: {
      caption: 'The lot between its limits',
      columns: [{ label: 'What' }, { label: 'Figure', number: true }],
      rows: [
        { cells: ['Lower limit', figure(lower)] },
        { cells: ['Mean less three s', figure(mean - 3 * s)] },
        { cells: ['Mean', figure(mean)] },
        { cells: ['Mean and three s', figure(mean + 3 * s)] },
        { cells: ['Upper limit', figure(upper)] },
      ],
    },
  };
}
