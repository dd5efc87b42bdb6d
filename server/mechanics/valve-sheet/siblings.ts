import { computation as outliers } from '../computations/outliers.ts';
import { medianOf } from '../statistics/median.ts';

/** Fewer siblings than this have no middle worth the name. */
const FEWEST = 3;

/** How far each value lies from the median of the others; undefined where there are too few to compare with. */
export function offSiblings(values: readonly (number | undefined)[]): (number | undefined)[] {
  const known = values.filter((value) => value !== undefined);
  if (known.length < FEWEST) return values.map(() => undefined);
  return values.map((value, index) => {
    if (value === undefined) return undefined;
    const others = values.filter((other, at): other is number => at !== index && other !== undefined);
    return value - medianOf(others);
  });
}

/** Which of the values stand out by the median and its absolute deviation. */
export function standOut(values: readonly (number | undefined)[]): boolean[] {
  const at = values.flatMap((value, index) => (value === undefined ? [] : [{ value, index }]));
  if (at.length < FEWEST) return values.map(() => false);
  const { flagged } = outliers.compute({ values: at.map(({ value }) => value), method: 'median-mad' });
  const out = new Set(flagged.map((index) => at[index]?.index));
  return values.map((_, index) => out.has(index));
}

export function medianKnown(values: readonly (number | undefined)[]): number | undefined {
  const known = values.filter((value) => value !== undefined);
  return known.length === 0 ? undefined : medianOf(known);
}
