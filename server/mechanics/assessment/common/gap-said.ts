import { bareInches, inches } from './said.ts';

/** A gap in metres: a best value where there is one, and the ends it lies between as far as they are known. */
export interface GapBounds {
  readonly value?: number;
  readonly low?: number;
  readonly high?: number;
}

/** Ends that are as far from the value, to the digits that are told. */
const even = (value: number, low: number, high: number): boolean =>
  bareInches(value - low) === bareInches(high - value);

/** `.062 in ± .005`, `.062 in (.048 to .067)`, `.024 to .028 in`, `more than .060 in`. */
export function gapSaid({ value, low, high }: GapBounds): string {
  if (value !== undefined && low !== undefined && high !== undefined)
    return even(value, low, high)
      ? `${inches(value)} ± ${bareInches(value - low)}`
      : `${inches(value)} (${bareInches(low)} to ${bareInches(high)})`;
  if (value !== undefined) return inches(value);
  if (low !== undefined && high !== undefined) return `${bareInches(low)} to ${inches(high)}`;
  if (high !== undefined) return `less than ${inches(high)}`;
  return low === undefined ? 'not known' : `more than ${inches(low)}`;
}
