import { z } from 'zod';
import { sampleOf } from '../../mechanics/uncertainty/sample.ts';
import { capability as drawCapability } from '../capability.ts';
import { controlChart as drawChart } from '../control-chart.ts';
import { scores as drawScores } from '../scores.ts';
import { draws } from './draws.ts';

const band = z.object({ lower: z.number(), upper: z.number() });
const mean = (values: readonly number[]) => values.reduce((sum, each) => sum + each, 0) / values.length;
const spread = (values: readonly number[]) => Math.max(...values) - Math.min(...values);

/** Means and ranges of the subgroups; of single values, the values themselves and the step from each to the next. */
function seriesOf(given: { subgroups?: number[][] | undefined; individuals?: number[] | undefined }) {
  const { subgroups, individuals = [] } = given;
  if (subgroups !== undefined) {
    return { names: ['Mean', 'Range'] as const, values: subgroups.map(mean), ranges: subgroups.map(spread) };
  }
  const ranges = individuals.slice(1).map((value, index) => Math.abs(value - (individuals[index] ?? value)));
  return { names: ['Value', 'Moving range'] as const, values: individuals, ranges };
}

export const controlChart = draws(
  z.object({
    subgroups: z.array(z.array(z.number())).optional(),
    individuals: z.array(z.number()).optional(),
  }),
  z.object({
    centre: z.object({ mean: z.number(), range: z.number() }),
    limits: z.object({ mean: band, range: band }),
    signals: z.array(z.object({ index: z.number(), rule: z.string() })),
  }),
  (given, { centre, limits, signals }, drawnFor) => {
    const { names, values, ranges } = seriesOf(given);
    const broken = (ofRange: boolean) =>
      signals.filter(({ rule }) => rule.startsWith('range') === ofRange).map(({ index }) => index);
    return drawChart(
      { name: names[0], values, centre: centre.mean, ...limits.mean, signals: broken(false) },
      {
        name: names[1],
        values: ranges,
        centre: centre.range,
        ...limits.range,
        signals: broken(true),
        start: values.length - ranges.length,
      },
      drawnFor,
    );
  },
);

export const outliers = draws(
  z.object({ values: z.array(z.number()), tail: z.enum(['two', 'upper', 'lower']).default('two') }),
  z.object({ scores: z.array(z.number()), flagged: z.array(z.number()), critical: z.number() }),
  (given, result, drawnFor) => drawScores({ ...given, ...result }, drawnFor),
);

export const capability = draws(
  z.object({
    values: z.array(z.number()).optional(),
    mean: z.number().default(0),
    s: z.number().default(1),
    lower: z.number(),
    upper: z.number(),
  }),
  z.object({ cp: z.number(), cpk: z.number() }),
  ({ values, mean, s, ...limits }, result, drawnFor) => {
    const sample = values === undefined ? { mean, s } : sampleOf(values);
    return drawCapability({ mean: sample.mean, s: sample.s ?? s, ...limits, ...result }, drawnFor);
  },
);
