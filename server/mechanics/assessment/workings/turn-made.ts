import { EQUAL } from '../../kit/nearest.ts';
import type { AssessedQuestion } from '../assessment.ts';
import { ALIKE, findsOf, foundTwice, holds, isAt } from '../common/found-twice.ts';
import type { KeptSet } from '../common/kept.ts';
import { hasHeld } from '../common/lash-done.ts';
import { lashLogOf } from '../common/lash-log-of.ts';
import { newestLash } from '../common/newest-lash.ts';
import type { NotSet } from '../common/not-set.ts';
import { byPlace, placeOf } from '../common/said.ts';
import type { TurnsEvidence } from '../evidence/kept-sums.ts';
import type { Bounds, Evidence, LashEvidence, ValvePlace } from '../evidence.ts';
import { sumAgainstLog } from './sum-against-log.ts';

/** A valve whose lash went on since: it was set, or found at another gap. */
interface MadeAt extends ValvePlace {
  readonly how: 'set' | 'found';
  readonly gap: Bounds;
  /** It was set to what was wanted. */
  readonly asWanted: boolean;
  /** What was found since it was set, and whether that is what it was set to. */
  readonly since?: { readonly gap: Bounds; readonly held: boolean };
}

/** The valves that a turn was worked out for, as far as the lash log tells. */
export interface TurnMade {
  /** Found at that gap, and nothing since. */
  readonly waiting: readonly ValvePlace[];
  readonly made: readonly MadeAt[];
  /** Which gap holds, or of which valve: no turn is told until it is answered. Raised by the lash log. */
  readonly twice: readonly AssessedQuestion[];
  /** The same of the sum against the log; raised here. */
  readonly against: readonly AssessedQuestion[];
  /** Valves that it would be made on, or may be, and that nobody sets yet. */
  readonly notSet: readonly NotSet[];
}

export const NOT_MADE: TurnMade = { waiting: [], made: [], twice: [], against: [], notSet: [] };

/** Found at that gap: as one figure, or between two feelers that it lies between. */
const isFoundAt = (line: LashEvidence, gap: number): boolean => isAt(line, gap) || holds(line, gap);

const isSetting = ({ moment }: LashEvidence): boolean => moment === 'set';

const plain = ({ cylinder, valve }: ValvePlace): ValvePlace => ({ cylinder, valve });

function isWithin({ value, low = value, high = value }: Bounds, wanted: number): boolean {
  return (
    low !== undefined && high !== undefined && wanted >= low - ALIKE - EQUAL && wanted <= high + ALIKE + EQUAL
  );
}

/** The log has the gap of the sum nowhere: what was found of other gaps is asked about first. */
function unnamed(
  kept: KeptSet<TurnsEvidence>,
  from: number,
  evidence: Evidence,
  places: readonly ValvePlace[],
): TurnMade {
  const found = places.flatMap((place) => findsOf(evidence, place).at(-1) ?? []);
  if (found.length === 0) return NOT_MADE;
  const { question, of } = sumAgainstLog(kept, from, found, evidence.answers);
  return { ...NOT_MADE, against: [question], waiting: of === undefined ? [] : [of] };
}

/** What became of the gap of the sum on one valve that the log has at it. */
function onValve(evidence: Evidence, place: ValvePlace, from: number, wanted: number): TurnMade {
  const twice = foundTwice(evidence, place);
  if (twice !== undefined && twice.holds === undefined) return { ...NOT_MADE, twice: [twice.question] };
  const now: LashEvidence | undefined = twice?.holds ?? newestLash(evidence, place);
  if (now === undefined) return NOT_MADE;
  if (now.moment === 'found' && isFoundAt(now, from)) return { ...NOT_MADE, waiting: [plain(place)] };
  const lines = lashLogOf(evidence, place);
  const set = lines.slice(lines.findLastIndex((each) => isFoundAt(each, from)) + 1).findLast(isSetting);
  if (now.moment === 'found' && set !== undefined) {
    const since = { gap: now.gap, held: hasHeld(set, now) };
    const made = { ...plain(place), how: 'set' as const, gap: set.gap, asWanted: isWithin(set.gap, wanted) };
    return { ...NOT_MADE, made: [{ ...made, since }] };
  }
  const { moment: how, gap } = now;
  return { ...NOT_MADE, made: [{ ...plain(place), how, gap, asWanted: isWithin(gap, wanted) }] };
}

/**
 * Whether the log has gone past what a turn was worked out from: by its gaps, whichever was entered first. A log without
 * that gap tells only by a setting that was entered after the sum.
 */
export function turnMade(kept: KeptSet<TurnsEvidence>, evidence: Evidence): TurnMade {
  const { set, line } = kept;
  const { lashFound, lashWanted } = set;
  if (lashFound === undefined || lashWanted === undefined) return NOT_MADE;
  const standing = evidence.lash.filter((each) => each.standing);
  const places = [...new Map(standing.map((each) => [placeOf(each), each])).values()].toSorted(byPlace);
  const all = places.map((place) => {
    const lines = lashLogOf(evidence, place);
    const from = lines.some((each) => each.moment === 'found' && isAt(each, lashFound));
    const between = lines.some((each) => each.moment === 'found' && holds(each, lashFound));
    const to = lines.some((each) => each.moment === 'set' && isAt(each, lashWanted) && each.line > line);
    return { place, from, between, to };
  });
  const exact = all.filter(({ from }) => from);
  const between = all.filter((each) => each.between);
  // Of several valves whose feelers hold it nobody can tell which one is meant.
  const found = exact.length > 0 ? exact : between.length === 1 ? between : [];
  const known = found.length > 0 ? found : all.filter(({ to }) => to);
  if (known.length === 0) return unnamed(kept, lashFound, evidence, places);
  const each = known.map(({ place }) => onValve(evidence, place, lashFound, lashWanted));
  return {
    waiting: each.flatMap(({ waiting }) => waiting),
    made: each.flatMap(({ made }) => made),
    twice: each.flatMap(({ twice }) => twice),
    against: [],
    notSet: [],
  };
}

/** The same without the valves that nobody sets yet; of a turn that names no gap every such valve may be meant. */
export function withoutNotSet(
  told: TurnMade,
  { lashFound }: Pick<TurnsEvidence, 'lashFound'>,
  notSet: readonly NotSet[],
): TurnMade {
  const isOn = (place: ValvePlace) => (each: NotSet) => placeOf(each) === placeOf(place);
  // Of one valve the gravest is told: the lash log goes before what was answered.
  const first = notSet.filter((each, at) => notSet.findIndex(isOn(each)) === at);
  return {
    ...told,
    waiting: told.waiting.filter((place) => !notSet.some(isOn(place))),
    notSet:
      lashFound === undefined
        ? first
        : first.filter((each) => told.waiting.some((place) => isOn(place)(each))),
  };
}

/** Every valve that it would be made on is looked at first. */
export const isHeld = ({ waiting, made, notSet }: TurnMade): boolean =>
  notSet.length > 0 && waiting.length + made.length === 0;
