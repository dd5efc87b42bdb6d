import { computation as outliers } from '../computations/outliers.ts';
import { EQUAL } from '../kit/nearest.ts';
import { medianOf } from '../statistics/median.ts';

/** Fewer siblings than this have no middle worth the name. */
export const FEWEST_WITH_MIDDLE = 3;

/**
 * How far each value lies from the median of all of them, itself among them; undefined where there are too few to compare
 * with. Of three the median of the other two is the middle of a good one and a bad one, and makes both of them odd.
 */
export function offSiblings(values: readonly (number | undefined)[]): (number | undefined)[] {
  const known = values.filter((value) => value !== undefined);
  if (known.length < FEWEST_WITH_MIDDLE) return values.map(() => undefined);
  const middle = medianOf(known);
  return values.map((value) => (value === undefined ? undefined : value - middle));
}

/**
 * Whether values have a middle that one of them can be off from.
 *
 * Equation: at least half of them, and two at the least, with |value − median| ≤ within
 *
 * @param values [m] readings of valves that are ground and made alike
 * @param within [m] how far one of them may lie off and still be like the others
 *
 * Source: derived here: what no two agree on, and what is halved, names none of them.
 */
export function haveMiddle(values: readonly number[], within: number): boolean {
  if (values.length < FEWEST_WITH_MIDDLE) return false;
  const middle = medianOf(values);
  const near = values.filter((value) => Math.abs(value - middle) <= within + EQUAL).length;
  return near >= 2 && 2 * near >= values.length;
}

/** Which of the values stand out by the median and its absolute deviation. */
export function standOut(values: readonly (number | undefined)[]): boolean[] {
  const at = values.flatMap((value, index) => (value === undefined ? [] : [{ value, index }]));
  if (at.length < FEWEST_WITH_MIDDLE) return values.map(() => false);
  const { flagged } = outliers.compute({ values: at.map(({ value }) => value), method: 'median-mad' });
  const out = new Set(flagged.map((index) => at[index]?.index));
  return values.map((_, index) => out.has(index));
}

/** The median of those that are known; of none there is none. */
export function medianKnown(values: readonly (number | undefined)[]): number | undefined {
  const known = values.filter((value) => value !== undefined);
  return known.length === 0 ? undefined : medianOf(known);
}
