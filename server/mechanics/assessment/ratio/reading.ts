import { formatRatioInterval } from '../../../../shared/quantities/format.ts';
import type { GroupExplained } from './explain.ts';
import { restingOn } from './lacking.ts';

/** A light-spring ratio as it was read, with the 95 % interval of the reading itself. */
export interface RatioRead {
  readonly value: number;
  readonly low: number;
  readonly high: number;
}

/**
 * The ratio that is told of an arm on a valve: the mean of the passes of the set-up that lacks least, over its lobe. It
 * is the figure of the headline and the one that is calculated with; what else is known of such arms is weighed beside
 * it, under its own name.
 */
export function ratioReadOf(explained: GroupExplained): RatioRead | undefined {
  const result = restingOn(explained)?.result;
  if (result === undefined) return undefined;
  const [low, high] = result.interval95;
  return { value: result.ratio, low, high };
}

/** `1.648 ± .016 as read` */
export const asRead = ({ value, low, high }: RatioRead): string =>
  `${formatRatioInterval(value, (high - low) / 2)} as read`;
