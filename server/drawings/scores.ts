import { formatNumber } from '../../shared/quantities/format.ts';
import { levelAxis, PLOT, scaleOver, uprightAxis } from './axes.ts';
import type { Drawing, DrawnFor } from './drawing.ts';
import { at, circle, label, line, path } from './svg.ts';

interface Scores {
  readonly values: readonly number[];
  /** Distance of each value from the middle in units of the scatter, signed. */
  readonly scores: readonly number[];
  readonly flagged: readonly number[];
  readonly critical: number;
  /** Which sides the critical score is ruled on. */
  readonly tail: 'two' | 'upper' | 'lower';
}

const figure = (value: number) => formatNumber(value, 2);

/** The scores of values in their order, the critical score ruled, a flagged value ringed and named. */
export function scores(data: Scores, { id }: DrawnFor): Drawing {
  const plot = PLOT;
  const limits = [
    ...(data.tail === 'lower' ? [] : [data.critical]),
    ...(data.tail === 'upper' ? [] : [-data.critical]),
  ];
  const x = scaleOver([0, Math.max(1, data.scores.length - 1)], [plot.left + 8, plot.right - 8]);
  const y = scaleOver([0, ...limits, ...data.scores], [plot.bottom, plot.top]);
  const flagged = new Set(data.flagged);
  const ruled = limits.map(
    (limit) =>
      path('draw-limit', `M${at(plot.left)} ${at(y(limit))}H${at(plot.right)}`) +
      label(plot.left + 4, y(limit) + (limit < 0 ? 14 : -5), `critical ${figure(limit)}`, { soft: true }),
  );
  const stems = data.scores.map((score, index) => line('draw-behind', x(index), y(0), x(index), y(score)));
  const marks = data.scores.map((score, index) => {
    const [cx, cy] = [x(index), y(score)];
    if (!flagged.has(index)) return circle('draw-solid', cx, cy, 2.5);
    const anchor = cx > 160 ? 'end' : 'start';
    const beside = cx + (anchor === 'end' ? -10 : 10);
    return (
      circle('draw-signal', cx, cy, 6) +
      circle('draw-point', cx, cy, 3) +
      label(beside, cy + 4, `no. ${index}`, { anchor })
    );
  });
  const named = data.flagged.length === 0 ? 'No value is flagged.' : `Flagged: ${data.flagged.join(', ')}.`;
  return {
    id,
    title: 'Scores of the values',
    desc: `${data.scores.length} values, numbered from 0; a score past ${figure(data.critical)} is flagged. ${named}`,
    viewBox: '0 0 320 238',
    svg:
      uprightAxis(y, plot, 'score') +
      levelAxis(x, plot, 'number of the value, from 0', { whole: true }) +
      path('draw-axis', `M${at(plot.left)} ${at(y(0))}H${at(plot.right)}`) +
      stems.join('') +
      ruled.join('') +
      marks.join(''),
    toScale: true,
    table: {
      caption: 'Scores of the values',
      columns: [
        { label: 'Number' },
        { label: 'Value', number: true },
        { label: 'Score', number: true },
        { label: 'Flagged' },
      ],
      rows: data.scores.map((score, index) => ({
        cells: [
          String(index),
          String(data.values[index] ?? ''),
          figure(score),
          flagged.has(index) ? 'flagged' : '',
        ],
      })),
    },
  };
}
