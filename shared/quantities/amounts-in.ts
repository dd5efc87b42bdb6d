import { readNumber } from './read-number.ts';
import { type Quantity, UNITS } from './units.ts';

/** A number with its point, or with a unit behind it: a bare whole number is as often the number of a pass. */
const AMOUNT =
  /(?<![\w.,])(?:\d*[.,]\d+\s*(?:thou(?:sandths?)?|in(?:ch(?:es)?)?\b|mm|["”])?|\d+\s*(?:thou(?:sandths?)?\b|in(?:ch(?:es)?)?\b|mm\b|["”]))/gi;

interface Amount extends Quantity {
  /** As it was said, to be put back word for word. */
  readonly typed: string;
  readonly readAs: string;
}

/** The lengths that somebody named in their own words, each once; a number without a unit is in inches. */
export function amountsIn(text: string): Amount[] {
  const found = [...text.matchAll(AMOUNT)].flatMap(([amount]): Amount[] => {
    const read = readNumber(amount, { kind: 'length', assume: 'in' });
    return read.ok && read.unit !== undefined
      ? [{ typed: amount.trim(), value: read.value, unit: read.unit, readAs: read.readAs }]
      : [];
  });
  const size = ({ value, unit }: Amount) => (value * UNITS[unit].toSi).toPrecision(9);
  return [...new Map(found.map((each) => [size(each), each])).values()];
}
