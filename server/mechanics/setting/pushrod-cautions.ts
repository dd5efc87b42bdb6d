import { EQUAL } from '../kit/nearest.ts';
import { saidLength } from '../kit/said.ts';
import { IN } from '../kit/si.ts';
import { EFFECTIVE_SHORTER } from './setting-table.ts';

/** Differences this near to a known slip are asked about: two readings of a checker differ by as much. */
const LIKE = 0.002 * IN;

interface Fitted {
  readonly pitch: number;
  readonly add: number;
  readonly less: number;
  readonly difference: number;
}

/** What a pushrod that is longer or shorter than wanted does to the preload or the gap that was allowed for. */
function whatItDoes({ add, less, difference }: Fitted): string {
  const off = `${saidLength(Math.abs(difference))} ${difference > 0 ? 'longer' : 'shorter'} than wanted`;
  const [preload, gap] = [add + difference, less - difference];
  if (add > 0 && less > 0) return `It is ${off}.`;
  if (add > 0)
    return preload > EQUAL
      ? `It is ${off}: without an adjuster the preload becomes ${saidLength(preload)}.`
      : `It is ${off}: without an adjuster no preload is left.`;
  if (less > 0)
    return gap > EQUAL
      ? `It is ${off}: without an adjuster the gap at the pushrod becomes ${saidLength(gap)}.`
      : `It is ${off}: without an adjuster no gap is left, and the valve is held off its seat.`;
  return `It is ${off}: an adjuster takes that up only as far as its thread and the tip’s mark allow.`;
}

/**
 * What is said of the pushrod in stock that is nearest: what its difference does, and whether the difference looks like
 * a slip: the other way of telling a length, or turns of the checker miscounted.
 */
export function nearestCautions(fitted: Fitted): string[] {
  const off = Math.abs(fitted.difference);
  if (off <= EQUAL) return [];
  // Any difference is near to some count of turns of a thread finer than a checker has.
  const counted = fitted.pitch > 4 * LIKE ? Math.round(off / fitted.pitch) : 0;
  return [
    whatItDoes(fitted),
    ...(Math.abs(off - EFFECTIVE_SHORTER.by) <= LIKE
      ? [
          `That is about what overall and effective lengths are apart, ${saidLength(EFFECTIVE_SHORTER.by)}: are checker and stock told the same way?`,
        ]
      : []),
    ...(counted > 0 && Math.abs(off - counted * fitted.pitch) <= LIKE
      ? [
          `That is about ${counted === 1 ? 'one turn' : `${counted} turns`} of the checker: count its turns again.`,
        ]
      : []),
  ];
}
