import { groupKey } from '../read/group-key.ts';
import { halfWidthOf } from '../read/intervals.ts';
import type { RatioLack } from '../read/lack.ts';
import { SPRINGS_SWAPPED } from '../read/sayings.ts';
import type { SetUpKnown } from './known.ts';

/** Both springs of one arm on one valve, each as it was read last. */
interface Pair {
  readonly light: SetUpKnown;
  readonly running: SetUpKnown;
}

function pairsOf(known: readonly SetUpKnown[]): Pair[] {
  const keys = [...new Set(known.map(({ read }) => groupKey(read.setUp)))];
  return keys.flatMap((key) => {
    const own = known.filter(({ read, result }) => groupKey(read.setUp) === key && result !== undefined);
    const [light, running] = (['light', 'running'] as const).map((spring) =>
      own.findLast(({ read }) => read.setUp.spring === spring),
    );
    return light === undefined || running === undefined ? [] : [{ light, running }];
  });
}

/** Somebody looked: each was read on the spring that it is noted with. */
const isAsNoted = ({ questions }: SetUpKnown): boolean =>
  questions.some(({ code, answered }) => code === SPRINGS_SWAPPED && answered?.found === false);

/** A spring takes lift and adds none: how far the running one reads over the light one, past what the dial may be off. */
function overBy({ light, running }: Pair): number | undefined {
  const [a, b] = [light.read.lift?.read, running.read.lift?.read];
  const isAlike = light.read.setUp.lash === running.read.setUp.lash;
  if (a === undefined || b === undefined || !isAlike) return undefined;
  const half = Math.hypot(...[light, running].map(({ read }) => halfWidthOf(read.valve.used, read.setUp)));
  return b - a > half ? b - a : undefined;
}

/**
 * Two springs that are each as noted, and the running one reads over the light one: that cannot be, and one of them was
 * misread. Neither is set against anything before both are read again.
 */
export function withSpringsAgainst(known: readonly SetUpKnown[]): SetUpKnown[] {
  const lacks = new Map<SetUpKnown, RatioLack>();
  for (const pair of pairsOf(known)) {
    const by = overBy(pair);
    if (by === undefined || ![pair.light, pair.running].some(isAsNoted)) continue;
    for (const each of [pair.light, pair.running]) lacks.set(each, { code: 'springs-against', by });
  }
  return known.map((each) => {
    const lack = lacks.get(each);
    return lack === undefined ? each : { ...each, lacks: [...each.lacks, lack] };
  });
}
