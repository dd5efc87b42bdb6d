import { IN } from './si.ts';

/** Lengths this near are one length: nobody measures a billionth of an inch. */
export const EQUAL = 1e-9 * IN;

/**
 * The length in stock that is nearest to the one wanted; of two equally near the smaller one.
 *
 * @param stock [m] lengths there are, in any order
 * @param wanted [m] length wanted
 * @returns [m] one of the stock; undefined where nothing is in stock
 */
export function nearestOf(stock: readonly number[], wanted: number): number | undefined {
  const away = (each: number) => Math.abs(each - wanted);
  const least = Math.min(...stock.map(away));
  const [smallest] = stock.filter((each) => away(each) <= least + EQUAL).toSorted((a, b) => a - b);
  return smallest;
}
