import { sampleOf } from '../uncertainty/sample.ts';
import { controlConstants } from './control-constants.ts';

export interface Limits {
  readonly lower: number;
  readonly upper: number;
}

/** Points of a chart of means and of ranges with their centre lines and limits. */
export interface ControlChart {
  readonly means: readonly number[];
  readonly ranges: readonly number[];
  /** Index of the reading or subgroup that the first range belongs to. */
  readonly firstRange: number;
  readonly centre: { readonly mean: number; readonly range: number };
  readonly limits: { readonly mean: Limits; readonly range: Limits };
}

const meanOf = (values: readonly number[]): number => sampleOf(values).mean;

function rangeOf(values: readonly number[]): number {
  const [first = 0] = values;
  const [low, high] = values.reduce(
    ([least, most], value) => [Math.min(least, value), Math.max(most, value)],
    [first, first],
  );
  return high - low;
}

/**
 * Chart of subgroup means and ranges.
 *
 * Equation: mean: x̿ ± A2 R̄; range: D3 R̄ to D4 R̄
 *
 * @param subgroups [any] two or more of one size from 2 to 25
 * @returns means, ranges, centre, limits [as the values]
 *
 * Validity: normal values, subgroups taken alike.
 * Source: ISO 7870-2:2013, 6 (from memory); NIST/SEMATECH e-Handbook, 6.3.2.1.
 */
export function meanAndRange(subgroups: readonly (readonly number[])[]): ControlChart {
  const means = subgroups.map(meanOf);
  const ranges = subgroups.map(rangeOf);
  const { a2, lowerRange, upperRange } = controlConstants(subgroups[0]?.length ?? 0);
  const mean = meanOf(means);
  const range = meanOf(ranges);
  return {
    means,
    ranges,
    firstRange: 0,
    centre: { mean, range },
    limits: {
      mean: { lower: mean - a2 * range, upper: mean + a2 * range },
      range: { lower: lowerRange * range, upper: upperRange * range },
    },
  };
}

/**
 * Chart of single values and of the range from each to the next.
 *
 * Equation: value: x̄ ± 3 MR̄/d2; moving range: zero to D4 MR̄, d2 and D4 for two
 *
 * @param values [any] two or more in the order they came
 * @returns means (the values), ranges (from the second on), centre, limits [as the values]
 *
 * Validity: normal values.
 * Source: ISO 7870-2:2013, 6 (from memory); NIST/SEMATECH e-Handbook, 6.3.2.2.
 */
export function individualsAndMovingRange(values: readonly number[]): ControlChart {
  const ranges = values.slice(1).map((value, index) => Math.abs(value - (values[index] ?? value)));
  const { d2, lowerRange, upperRange } = controlConstants(2);
  const mean = meanOf(values);
  const range = meanOf(ranges);
  const reach = (3 * range) / d2;
  return {
    means: values,
    ranges,
    firstRange: 1,
    centre: { mean, range },
    limits: {
      mean: { lower: mean - reach, upper: mean + reach },
      range: { lower: lowerRange * range, upper: upperRange * range },
    },
  };
}
