import { defined } from '../../../../../shared/defined.ts';
import { formatRatioInterval } from '../../../../../shared/quantities/format.ts';
import type { GroupExplained } from './explain.ts';
import type { SetUpKnown } from './known.ts';
import { restingOn } from './lacking.ts';

/** A light-spring ratio as it was read, with the 95 % interval of the reading itself. */
export interface RatioRead {
  readonly value: number;
  readonly low: number;
  readonly high: number;
  /** What was read once only: nothing shows that it repeats. */
  readonly once?: 'valve lift' | 'lobe lift';
}

function onceIn({ read: { valve, lobe } }: SetUpKnown): RatioRead['once'] {
  if (valve.used.length === 1) return 'valve lift';
  return lobe.source === 'indicator' && lobe.passes.used.length === 1 ? 'lobe lift' : undefined;
}

/**
 * The ratio that is told of an arm on a valve: the mean of the passes of the set-up that lacks least, over its lobe. It
 * is the figure of the headline and the one that is calculated with; what else is known of such arms is weighed beside
 * it, under its own name.
 */
export function ratioReadOf(explained: GroupExplained): RatioRead | undefined {
  const resting = restingOn(explained);
  if (resting?.result === undefined) return undefined;
  const { ratio, interval95 } = resting.result;
  const [low, high] = interval95;
  return { value: ratio, low, high, ...defined({ once: onceIn(resting) }) };
}

/** `1.648 ± .016 as read`, `1.648 ± .018 as read from one pass` */
export const asRead = ({ value, low, high, once }: RatioRead): string =>
  `${formatRatioInterval(value, (high - low) / 2)} as read${once === undefined ? '' : ONCE[once]}`;

const ONCE = { 'valve lift': ' from one pass', 'lobe lift': ' over a lobe of one pass' } as const;

/** What a word, or a figure to use, lacks where something was read once only. */
export const repeatSaid = ({ once }: RatioRead): string =>
  once === undefined ? '' : ` Two more passes of the ${once} show whether it repeats.`;
