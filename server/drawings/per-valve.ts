import { scaleLinear } from 'd3-scale';
import { formatFigure } from '../../shared/quantities/format.ts';
import { toldIn } from '../../shared/quantities/spoken-units.ts';
import type { Drawing, DrawnFor } from './drawing.ts';
import { at, label, line, path } from './svg.ts';

/** One valve's figure in inches: a best value, or the ends it lies between; nothing where it was not read. */
export interface ValveBar {
  readonly cylinder: number;
  /** What it is called below its bar; left out, by its cylinder. */
  readonly name?: string;
  readonly value?: number;
  readonly low?: number;
  readonly high?: number;
  readonly odd: boolean;
}

interface PerValve {
  /** `Valve lift, light spring, intake`. */
  readonly title: string;
  readonly median: number;
  /** A valve is odd this far from its siblings. */
  readonly oddBeyond: number;
  readonly bars: readonly ValveBar[];
}

/** To a thousandth, as the sentence beside it has it: no gauge on an engine is finer. */
const offSaid = (off: number): string =>
  `${off > 0 ? '+' : ''}${formatFigure({ value: Number(off.toPrecision(12)), unit: 'in' }, { places: 3 })}`;

const LEFT = 48;
const RIGHT = 304;
const TOP = 34;
const BOTTOM = 188;
const MIDDLE = (TOP + BOTTOM) / 2;

const nameOf = ({ cylinder, name }: ValveBar): string => name ?? String(cylinder);

/** Room past the farthest bar for its figure, which stands clear of the name below. */
const ROOM = 1.25;

/** Inches to each side of the median that fit: twice the limit, or as far as the farthest valve. */
function reachOf({ bars, median, oddBeyond }: PerValve): number {
  const off = bars.flatMap(({ value, low, high }) =>
    [value, low, high].flatMap((each) => (each === undefined ? [] : [Math.abs(each - median)])),
  );
  return Math.max(2 * oddBeyond, ROOM * Math.max(0, ...off));
}

function barOf(bar: ValveBar, x: number, half: number, y: (off: number) => number, median: number): string {
  const className = bar.odd ? 'draw-cut' : 'draw-solid';
  if (bar.value !== undefined) {
    const top = y(bar.value - median);
    return path(className, `M${at(x - half)} ${at(MIDDLE)}V${at(top)}H${at(x + half)}V${at(MIDDLE)}Z`);
  }
  if (bar.low === undefined && bar.high === undefined)
    return label(x, MIDDLE - 6, '–', { anchor: 'middle', soft: true });
  const cap = (end: number) => `M${at(x - half)} ${at(y(end - median))}H${at(x + half)}`;
  const [low, high] = [bar.low, bar.high];
  const from = low === undefined ? BOTTOM : y(low - median);
  const to = high === undefined ? TOP : y(high - median);
  return path(
    'draw-moving',
    `M${at(x)} ${at(from)}V${at(to)}${low === undefined ? '' : cap(low)}${high === undefined ? '' : cap(high)}`,
  );
}

/** The upright axis: how far off the median, with a hair line at each figure. */
function axisOf(reach: number, y: (off: number) => number, ruler: DrawnFor['ruler']): string {
  const perInch = ruler.of(1);
  const ticks = scaleLinear([-reach * perInch, reach * perInch], [0, 1]).ticks(5);
  const drawn = ticks.map((tick) => {
    const off = tick / perInch;
    const said = tick === 0 ? '0' : `${tick > 0 ? '+' : ''}${ruler.figure(off)}`;
    return (
      line('draw-rule', LEFT, y(off), RIGHT, y(off)) +
      label(LEFT - 5, y(off) + 4.5, said, { anchor: 'end', soft: true })
    );
  });
  return drawn.join('');
}

/** The valves of one side against their median, each as a bar up or down from it; the odd ones hatched and named. */
export function perValve(data: PerValve, { id, ruler }: DrawnFor): Drawing {
  const reach = reachOf(data);
  const y = (off: number) => MIDDLE - (off / reach) * ((BOTTOM - TOP) / 2);
  const step = (RIGHT - LEFT) / Math.max(1, data.bars.length);
  const half = Math.min(9, step * 0.36);
  const x = (index: number) => LEFT + (index + 0.5) * step;
  const odd = data.bars.filter((bar) => bar.odd);
  const names = data.bars.map((bar, index) =>
    label(x(index), BOTTOM + 16, nameOf(bar), {
      anchor: 'middle',
      ...(bar.odd ? { className: 'draw-text-strong' } : {}),
    }),
  );
  const values = data.bars.flatMap((bar, index) => {
    if (!bar.odd || bar.value === undefined) return [];
    const off = bar.value - data.median;
    return [
      label(x(index), y(off) + (off < 0 ? 14 : -5), offSaid(off), {
        anchor: 'middle',
        className: 'draw-text-strong',
      }),
    ];
  });
  const limits = [data.oddBeyond, -data.oddBeyond].map((off) =>
    line('draw-limit', LEFT, y(off), RIGHT, y(off)),
  );
  return {
    id,
    title: data.title,
    desc: `Median ${ruler.text(data.median)}.${
      odd.length === 0
        ? ''
        : ` Odd: ${odd.map((bar) => `${nameOf(bar)}${bar.value === undefined ? '' : ` at ${ruler.text(bar.value)}`}`).join(', ')}.`
    }`,
    viewBox: '0 0 320 228',
    svg:
      axisOf(reach, y, ruler) +
      limits.join('') +
      data.bars.map((bar, index) => barOf(bar, x(index), half, y, data.median)).join('') +
      line('draw-outline', LEFT, MIDDLE, RIGHT, MIDDLE) +
      names.join('') +
      values.join('') +
      label(4, 14, `median ${ruler.text(data.median)}`, { className: 'draw-text-strong' }) +
      label(RIGHT, 14, `limits ±${ruler.figure(data.oddBeyond)}`, { anchor: 'end', soft: true }) +
      label(4, BOTTOM + 34, `off the median, ${toldIn(ruler.unit)}`, { soft: true }) +
      label(RIGHT, BOTTOM + 34, 'cylinder', { anchor: 'end', soft: true }),
    toScale: true,
    table: {
      caption: data.title,
      columns: [
        { label: 'Cylinder' },
        { label: `Reading, ${ruler.unit}`, number: true },
        { label: `From the median, ${toldIn('in')}`, number: true },
      ],
      rows: data.bars.map((bar) => ({
        odd: bar.odd,
        cells: [
          nameOf(bar),
          readingOf(bar, ruler.figure),
          bar.value === undefined ? '' : offSaid(bar.value - data.median),
        ],
      })),
    },
  };
}

function readingOf({ value, low, high }: ValveBar, figure: (inches: number) => string): string {
  if (value !== undefined) return figure(value);
  if (low === undefined && high === undefined) return 'not read';
  return [
    ...(low === undefined ? [] : [`over ${figure(low)}`]),
    ...(high === undefined ? [] : [`under ${figure(high)}`]),
  ].join(', ');
}
