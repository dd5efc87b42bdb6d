/**
 * The middle of the values: half lie on each side.
 *
 * Equation: the middle one in order; of an even number, the mean of the two middle ones
 *
 * @param values [any] at least one
 * @returns median [as the values]
 * @throws RangeError without a value
 *
 * Source: definition.
 */
export function medianOf(values: readonly number[]): number {
  const ordered = values.toSorted((a, b) => a - b);
  const half = ordered.length >> 1;
  const upper = ordered[half];
  if (upper === undefined) throw new RangeError('a median needs a value');
  if (ordered.length % 2 === 1) return upper;
  return ((ordered[half - 1] ?? upper) + upper) / 2;
}
