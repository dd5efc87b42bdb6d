import { z } from 'zod';
import { outList, outNumber, outPlace, outText, outWord } from '../../../shared/schemas/outputs.ts';
import { defineComputation } from '../kit/computation.ts';
import { chartInput } from '../statistics/chart-fields.ts';
import { type ControlChart, individualsAndMovingRange, meanAndRange } from '../statistics/control-limits.ts';
import { RULES, signalsOf } from '../statistics/run-rules.ts';

/** Fewer points than this give limits that still move (NIST/SEMATECH e-Handbook, 6.3.2: 20 to 25). */
const ENOUGH = 20;

const limits = (of: string) =>
  z.object({ lower: outNumber(`lower limit of the ${of}`), upper: outNumber(`upper limit of the ${of}`) });

const output = z.object({
  centre: z.object({ mean: outNumber('centre line of the values'), range: outNumber('mean range') }),
  limits: z.object({ mean: limits('mean'), range: limits('range') }),
  signals: outList(
    z.object({ index: outPlace('the point'), rule: outWord(RULES, 'the pattern it completes') }),
    'points that call for a look',
  ),
  summary: outText('what the chart says in one line'),
});

type Input = z.output<typeof chartInput>;

function chartOf({ chart, subgroups = [], individuals = [] }: Input): ControlChart {
  if (chart === 'individuals') return individualsAndMovingRange(individuals);
  return meanAndRange(subgroups);
}

/** The answer is whether something calls for a look, and where first; the centre only says where the chart is. */
function summaryOf(signals: ReturnType<typeof signalsOf>): string {
  const points = [...new Set(signals.map(({ index }) => index))].toSorted((a, b) => a - b);
  const [first] = points;
  if (first === undefined) return 'no signal';
  return points.length === 1
    ? `a signal at point ${first + 1}`
    : `signals at ${points.length} points, the first at point ${first + 1}`;
}

/**
 * Control chart of subgroups or single values: centre lines, limits and the points that call for a look.
 *
 * Equation: xbar-r: x̿ ± A2 R̄, D3 R̄ to D4 R̄; individuals: x̄ ± 3 MR̄/d2(2), zero to D4(2) MR̄
 *
 * @param subgroups [1] for xbar-r: two or more of one size, 2 to 25 values each
 * @param individuals [1] for individuals: two or more values in the order they came
 * @param chart [1] `xbar-r` or `individuals`
 * @returns centre {mean, range}, limits {mean, range: lower, upper} [as the values]; signals [1] {index from zero,
 * rule}, summary [1]
 * @throws not-allowed when a subgroup has another size than the first
 * @throws not-allowed when the other chart's list is given
 *
 * Validity: normal values, all in one unit; limits from few points move as more come.
 * Source: ISO 7870-2:2013 (from memory); zone rules NIST/SEMATECH e-Handbook, 6.3.2 (from memory).
 */
function controlChart(given: Input): z.output<typeof output> {
  const chart = chartOf(given);
  const signals = signalsOf(chart);
  return { centre: chart.centre, limits: chart.limits, signals, summary: summaryOf(signals) };
}

const subgroups = [
  [1.502, 1.498, 1.501],
  [1.497, 1.503, 1.499],
  [1.5, 1.531, 1.496],
];

export const computation = defineComputation({
  name: 'control-chart',
  title: 'Control chart',
  summary: 'Centre lines and limits of a lot’s values, and the points that call for a look.',
  words: ['control chart', 'control limits', 'lot', 'drift', 'trend', 'mean and range', 'moving range'],
  input: chartInput,
  output,
  equation: 'xbar-r: mean ± A2·R, range D3·R to D4·R; individuals: mean ± 3·MR/1.128, range 0 to 3.267·MR',
  tex: '\\bar{\\bar x}\\pm A_2\\bar R,\\qquad D_3\\bar R\\ldots D_4\\bar R,\\qquad \\bar x\\pm\\frac{3\\,\\overline{MR}}{d_2}',
  source: 'ISO 7870-2:2013 (from memory); zone rules NIST/SEMATECH e-Handbook, 6.3.2 (from memory)',
  validity: 'normal values in one unit, subgroups taken alike',
  assumptions: ({ chart }) => [
    'all values are in one unit and in the order they came',
    chart === 'xbar-r'
      ? 'subgroups were taken alike, each within a short time'
      : 'each range is from one value to the next',
  ],
  cautions: ({ subgroups: groups = [], individuals = [] }) =>
    Math.max(groups.length, individuals.length) < ENOUGH
      ? [`Fewer than ${ENOUGH} points: the limits will still move; read more before ruling on a lot.`]
      : [],
  example: {
    inputs: { subgroups, chart: 'xbar-r' },
    result: {
      centre: { mean: 1.503, range: 0.015 },
      limits: {
        mean: { lower: 1.4876500993808026, upper: 1.5183499006191974 },
        range: { lower: 0, upper: 0.038618869346862109 },
      },
      signals: [],
      summary: 'no signal',
    },
  },
  headline: () => ['summary'],
  compute: controlChart,
});
