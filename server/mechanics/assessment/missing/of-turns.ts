import { inDoubt } from '../common/asked.ts';
import { allKept } from '../common/kept.ts';
import { lashDone } from '../common/lash-done.ts';
import { byPlace, inches, listed, placeOf } from '../common/said.ts';
import { usableLash } from '../common/usable-lash.ts';
import type { Evidence, LashEvidence, ValvePlace } from '../evidence.ts';
import type { LashWork } from '../lash/work.ts';
import { turnMade } from '../workings/turn-made.ts';
import { type Need, need, worked } from './need.ts';

/** More valves than so many are not named at once. */
const FEW = 3;

/** Something is looked at before it is set. */
const waits = (notSet: LashWork['notSet'], place: ValvePlace): boolean =>
  notSet.some((each) => placeOf(each) === placeOf(place));

/** Every valve of the log is as it should be, or something is looked at first: nothing is left to be turned. */
function isDone(evidence: Evidence, { notSet }: LashWork): boolean {
  const standing = evidence.lash.filter((line) => line.standing);
  return (
    standing.length > 0 &&
    standing.every((line) => waits(notSet, line) || lashDone(evidence, line) !== undefined)
  );
}

/** The valves that a turn is worked out for: found, and not as they should be. */
function toTurn(evidence: Evidence, { notSet }: LashWork): ValvePlace[] {
  const standing = evidence.lash.filter((line) => line.standing);
  const places = [...new Map(standing.map((line) => [placeOf(line), line])).values()].toSorted(byPlace);
  return places.filter(
    (place) =>
      !waits(notSet, place) &&
      usableLash(evidence, place)?.moment === 'found' &&
      lashDone(evidence, place) === undefined,
  );
}

/** Valves found at a gap that no kept turn was worked out from, and that is not as it should be. */
function withoutSum(evidence: Evidence, { notSet }: LashWork): LashEvidence[] {
  const sums = allKept(evidence, 'turns').map((kept) => turnMade(kept, evidence));
  // Which gap holds, and of which valve a turn is, is asked first.
  if (sums.some(({ twice, against }) => [...twice, ...against].some(inDoubt))) return [];
  const told = new Set(sums.flatMap(({ waiting, made }) => [...waiting, ...made]).map(placeOf));
  const standing = evidence.lash.filter((line) => line.standing).toSorted(byPlace);
  const places = [...new Map(standing.map((line) => [placeOf(line), line])).values()];
  if (told.size === 0) return [];
  return places.flatMap((place) => {
    const now = usableLash(evidence, place);
    const isLeft =
      now?.moment === 'found' &&
      now.gap.value !== undefined &&
      now.gap.value > 0 &&
      !waits(notSet, place) &&
      lashDone(evidence, place) === undefined &&
      !told.has(placeOf(place));
    return isLeft ? [now] : [];
  });
}

/** A turn is worked out from one gap: a valve found at another has none yet. */
export function ofTurns(evidence: Evidence, work: LashWork): Need {
  const left = withoutSum(evidence, work);
  const [first, ...others] = left;
  if (first === undefined) {
    const places = toTurn(evidence, work).map(placeOf);
    const of = places.length === 0 || places.length > FEW ? '' : ` of ${listed(places)}`;
    return need(
      'turns',
      'what the turns of the adjuster do',
      `Give thread and turns of the adjuster${of}.`,
      worked(evidence, 'adjuster') || isDone(evidence, work),
      { at: { part: 'adjuster' } },
    );
  }
  const named =
    others.length < FEW
      ? listed(left.map((each) => `${placeOf(each)}, found at ${inches(each.gap.value ?? 0)}`))
      : `${placeOf(first)}, found at ${inches(first.gap.value ?? 0)}, and of ${others.length} others`;
  return need('turns', `the turn of ${named}`, `Work out the turn of ${named}, in the same way.`, false, {
    at: { part: 'adjuster' },
  });
}
