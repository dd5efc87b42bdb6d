/**
 * Mean d2 and standard deviation d3 of the range of n normal values in units of their standard deviation, n from
 * 2 to 25: integrals of the range's distribution, calculated to twelve places. They agree with the published tables
 * of ISO 7870-2:2013 (from memory) at their four places.
 */
const RANGES = [
  [2 / Math.sqrt(Math.PI), Math.sqrt(2 - 4 / Math.PI)],
  [1.692568750643, 0.888368004045],
  [2.058750746008, 0.879808202825],
  [2.325928947281, 0.8640819411],
  [2.534412721223, 0.848039686118],
  [2.704356751214, 0.833205335623],
  [2.847200612091, 0.819831489792],
  [2.970026324419, 0.807834274554],
  [3.07750546167, 0.79705067352],
  [3.172872703816, 0.787314620551],
  [3.258455279744, 0.778478341204],
  [3.335980354098, 0.770416202064],
  [3.4067631082, 0.763023095625],
  [3.471826889882, 0.756211429728],
  [3.53198278611, 0.74990808941],
  [3.587883961765, 0.744051783961],
  [3.640063757938, 0.738590853379],
  [3.688963023208, 0.733481495519],
  [3.734950119597, 0.728686345708],
  [3.778335829843, 0.724173340718],
  [3.819384643363, 0.719914808435],
  [3.858323423285, 0.715886735492],
  [3.895348148451, 0.712068175148],
  [3.930629219507, 0.708440765889],
] as const;

export const SMALLEST_SUBGROUP = 2;
export const LARGEST_SUBGROUP = RANGES.length + 1;

interface ControlConstants {
  readonly d2: number;
  readonly d3: number;
  /** Mean ± A2 · mean range. */
  readonly a2: number;
  /** Lower and upper limit of the range, as multiples of the mean range. */
  readonly lowerRange: number;
  readonly upperRange: number;
}

/**
 * Constants of mean and range charts at three standard deviations.
 *
 * Equation: A2 = 3/(d2 √n); D3 = max(0, 1 − 3 d3/d2); D4 = 1 + 3 d3/d2
 *
 * @param size [1] values in a subgroup, 2 to 25
 * @returns d2, d3, a2, lowerRange (D3), upperRange (D4) [1]
 * @throws RangeError when the size is not in the table
 *
 * Validity: normal values.
 * Source: ISO 7870-2:2013, table 2 (from memory); NIST/SEMATECH e-Handbook, 6.3.2.1.
 */
export function controlConstants(size: number): ControlConstants {
  const row = RANGES[size - SMALLEST_SUBGROUP];
  if (row === undefined) throw new RangeError(`no control constants for subgroups of ${size}`);
  const [d2, d3] = row;
  const reach = (3 * d3) / d2;
  return {
    d2,
    d3,
    a2: 3 / (d2 * Math.sqrt(size)),
    lowerRange: Math.max(0, 1 - reach),
    upperRange: 1 + reach,
  };
}
