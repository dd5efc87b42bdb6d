import { defined } from '../../../../shared/defined.ts';
import { bareFeeler, feeler } from '../../kit/say-inches.ts';
import { IN } from '../../kit/si.ts';
import { bareInches, inches } from './said.ts';

/** A gap in metres: a best value where there is one, and the ends it lies between as far as they are known. */
export interface GapBounds {
  readonly value?: number;
  readonly low?: number;
  readonly high?: number;
}

/** The least ± that is told: no gauge on an engine is finer. */
const FINEST = 0.001 * IN;

/** Ends that are as far from the value, to the digits that are told. */
const even = (value: number, low: number, high: number): boolean =>
  bareInches(value - low) === bareInches(high - value);

const negated = (si: number | undefined): number | undefined => (si === undefined ? undefined : -si);

/** Less than nothing is left, to the digits that are told: the parts would be in one another. */
export const touches = ({ value, high }: GapBounds): boolean => !isNone(value) && (value ?? high ?? 0) < 0;

/** No digit of it is told: nothing is left, and nothing is lacking. */
const isNone = (value: number | undefined): boolean => value !== undefined && Math.abs(value) < 0.0005 * IN;

/** `.012 in ± .006`: by how much parts touch; what may be room after all is said so. */
export function overlapSaid({ value, low, high }: GapBounds): string {
  if (value === undefined || high === undefined || high <= 0)
    return boundsSaid(defined({ value: negated(value), low: negated(high), high: negated(low) }));
  const most = low === undefined ? '' : `${bareInches(-low)} at the most, `;
  return `${inches(-value)} (${most}${bareInches(high)} of room at the best)`;
}

function boundsSaid({ value, low, high }: GapBounds): string {
  if (isNone(value))
    return `no room left${high === undefined ? '' : ` (${bareInches(Math.max(high, FINEST))} at the best)`}`;
  if (value !== undefined && low !== undefined && high !== undefined)
    return even(value, low, high)
      ? `${inches(value)} ± ${bareInches(Math.max(value - low, FINEST))}`
      : `${inches(value)} (${bareInches(low)} to ${bareInches(high)})`;
  if (value !== undefined) return inches(value);
  if (low !== undefined && high !== undefined) return `${bareInches(low)} to ${inches(high)}`;
  if (high !== undefined) return `less than ${inches(high)}`;
  return low === undefined ? 'not known' : `more than ${inches(low)}`;
}

/** `.062 in ± .005`, `.062 in (.048 to .067)`, `.024 to .028 in`, `more than .060 in`, `touching by .012 in ± .006`, `no room left`. */
export const gapSaid = (gap: GapBounds): string =>
  touches(gap) ? `touching by ${overlapSaid(gap)}` : boundsSaid(gap);

/** The lash of a valve, as finely as feelers go: `.0275 in`, `.019 to .022 in`, `less than .0015 in`. */
export function lashSaid({ value, low, high }: GapBounds): string {
  if (value !== undefined) return feeler(value);
  if (low !== undefined && high !== undefined) return `${bareFeeler(low)} to ${feeler(high)}`;
  if (high !== undefined) return `less than ${feeler(high)}`;
  return low === undefined ? 'not known' : `more than ${feeler(low)}`;
}
