import { sideOfValve } from '../../../../shared/schemas/words.ts';
import { inDoubt } from '../common/asked.ts';
import { allKept } from '../common/kept.ts';
import { lashDone } from '../common/lash-done.ts';
import { lashWanted } from '../common/lash-wanted.ts';
import { byPlace, inches, listed, placeOf } from '../common/said.ts';
import { usableLash } from '../common/usable-lash.ts';
import type { Evidence, LashEvidence, ValvePlace } from '../evidence.ts';
import { isUntold } from '../lash/against-card.ts';
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

/** What is said or read of one of them before any turn is worked out of its gap. */
function first(evidence: Evidence, places: readonly ValvePlace[]): Need | undefined {
  const sides = [...new Set(places.map(({ valve }) => sideOfValve(valve)))];
  const { card } = evidence;
  // Without the card’s a turn may still be given with both its ends.
  if (sides.some((each) => card[each].lash === undefined)) return undefined;
  const turns = (what: string, ask: string, more: Partial<Need>): Need =>
    need('turns', what, ask, false, more);
  for (const place of places) {
    const line = usableLash(evidence, place);
    const at = placeOf(place);
    if (line === undefined) continue;
    if (line.engine === 'not-said')
      return turns(
        `whether the gap of ${at} was read hot or cold`,
        `Ask whether the gap of ${at} was read hot or cold, and put that into the log: a turn goes from one heat to the same.`,
        { askAtBench: `Say whether the gap of ${at} was read hot or cold.`, corrects: [line.id] },
      );
    if (card.lashAt === undefined)
      return turns(
        'whether the lash on the card is for a hot or a cold engine',
        'Ask whether the lash on the card is for a hot or a cold engine.',
        {
          askAtBench: 'Look whether the lash on the card is for a hot or a cold engine.',
          at: { step: 'cam', field: 'cam.lashAt' },
        },
      );
    if (lashWanted(evidence, line) === undefined)
      return turns(
        `the gap of ${at} ${card.lashAt}, as the card’s lash is for`,
        `Read the gap of ${at} again ${card.lashAt}, as the card’s lash is for, or work out by the metals what it becomes.`,
        { turns: true, at: { part: 'lash' } },
      );
    if (isUntold(evidence, place))
      return turns(
        `the gap of ${at} with a leaf between`,
        `Read the gap of ${at} again with a leaf between these gauges: whether it is tight or wide can’t be told yet.`,
        { turns: true, at: { part: 'lash' } },
      );
  }
  return undefined;
}

/** A turn is worked out from one gap: a valve found at another has none yet. */
export function ofTurns(evidence: Evidence, work: LashWork): Need {
  const left = withoutSum(evidence, work);
  const [newest, ...others] = left;
  const hasTurn = worked(evidence, 'adjuster');
  const before = first(evidence, hasTurn ? left : toTurn(evidence, work));
  if (before !== undefined) return before;
  if (newest === undefined) {
    const found = toTurn(evidence, work);
    const places = found.map(placeOf);
    const wanted = found.some(({ valve }) => evidence.card[sideOfValve(valve)].lash === undefined)
      ? ', and which lash the cam’s maker asks for, hot or cold: the card on record has none'
      : '';
    const of = places.length === 0 || places.length > FEW ? '' : ` of ${listed(places)}`;
    return need(
      'turns',
      'what the turns of the adjuster do',
      `Give thread and turns of the adjuster${of}${wanted}.`,
      hasTurn || isDone(evidence, work),
      { at: { part: 'adjuster' } },
    );
  }
  const named =
    others.length < FEW
      ? listed(left.map((each) => `${placeOf(each)}, found at ${inches(each.gap.value ?? 0)}`))
      : `${placeOf(newest)}, found at ${inches(newest.gap.value ?? 0)}, and of ${others.length} others`;
  return need('turns', `the turn of ${named}`, `Work out the turn of ${named}, in the same way.`, false, {
    at: { part: 'adjuster' },
  });
}
