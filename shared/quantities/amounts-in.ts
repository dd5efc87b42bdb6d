import { readNumber } from './read-number.ts';
import type { Quantity } from './units.ts';

/** A number with its point, or with a unit behind it: a bare whole number is as often the number of a pass. */
const AMOUNT =
  /(?<![\w.,])(?:\d*[.,]\d+\s*(?:thou(?:sandths?)?|in(?:ch(?:es)?)?\b|mm|["”])?|\d+\s*(?:thou(?:sandths?)?\b|in(?:ch(?:es)?)?\b|mm\b|["”]))/gi;

interface Amount extends Quantity {
  readonly readAs: string;
}

/** The lengths that somebody named in their own words, a number without a unit in inches. */
export function amountsIn(text: string): Amount[] {
  const found = [...text.matchAll(AMOUNT)].flatMap(([amount]): Amount[] => {
    const read = readNumber(amount, { kind: 'length', assume: 'in' });
    return read.ok && read.unit !== undefined
      ? [{ value: read.value, unit: read.unit, readAs: read.readAs }]
      : [];
  });
  return [...new Map(found.map((each) => [each.readAs, each])).values()];
}
