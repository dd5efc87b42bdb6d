import { IN } from '../../kit/si.ts';
import { lashLogOf } from '../common/newest-lash.ts';
import { byPlace, placeOf } from '../common/said.ts';
import type { Evidence, LashEvidence, ValvePlace } from '../evidence.ts';
import type { TurnsEvidence } from './evidence.ts';
import type { KeptSet } from './kept.ts';

/** A valve whose lash went on since: it was set, or found at another gap. */
interface MadeAt extends ValvePlace {
  readonly how: 'set' | 'found';
}

/** The valves that a turn was worked out for, as far as the lash log tells. */
export interface TurnMade {
  /** Found at that gap, and nothing since. */
  readonly waiting: readonly ValvePlace[];
  readonly made: readonly MadeAt[];
}

/** Half the step of a set of feelers: nearer two gaps are one. */
const ALIKE = 0.0005 * IN;

const isAt = ({ gap: { value } }: LashEvidence, lash: number): boolean =>
  value !== undefined && Math.abs(value - lash) <= ALIKE;

/**
 * Whether the log has gone past what a turn was worked out from: by its gaps, whichever was entered first. A log without
 * that gap tells only by a setting that was entered after the sum.
 */
export function turnMade({ set, line }: KeptSet<TurnsEvidence>, evidence: Evidence): TurnMade {
  const { lashFound, lashWanted } = set;
  const nothing = { waiting: [], made: [] };
  if (lashFound === undefined || lashWanted === undefined) return nothing;
  const places = [...new Map(evidence.lash.map((each) => [placeOf(each), each])).values()].toSorted(byPlace);
  const all = places.map(({ cylinder, valve }) => {
    const lines = lashLogOf(evidence, { cylinder, valve });
    const newest = lines.at(-1);
    const from = lines.some((each) => each.moment === 'found' && isAt(each, lashFound));
    const to = lines.some((each) => each.moment === 'set' && isAt(each, lashWanted) && each.line > line);
    return { cylinder, valve, newest, from, to };
  });
  const known = all.some(({ from }) => from) ? all.filter(({ from }) => from) : all.filter(({ to }) => to);
  const isWaiting = (newest: LashEvidence | undefined): boolean =>
    newest?.moment === 'found' && isAt(newest, lashFound);
  return {
    waiting: known.flatMap(({ cylinder, valve, newest }) => (isWaiting(newest) ? [{ cylinder, valve }] : [])),
    made: known.flatMap(({ cylinder, valve, newest }) =>
      newest === undefined || isWaiting(newest) ? [] : [{ cylinder, valve, how: newest.moment }],
    ),
  };
}
