import { isHydraulicLifter } from '../../../../shared/lifters.ts';
import { ADJUSTER_WORDS, adjusterKind } from '../../lash/adjuster-words.ts';
import { inDoubt } from '../common/asked.ts';
import { allKept, lastKept } from '../common/kept.ts';
import type { Lack } from '../common/lack.ts';
import { lashDone } from '../common/lash-done.ts';
import { lashLogOf } from '../common/lash-log-of.ts';
import { byPlace, inches, listed, placeOf, upperFirst } from '../common/said.ts';
import { usableLash } from '../common/usable-lash.ts';
import { valveNames } from '../common/valve-names.ts';
import type { Evidence, LashEvidence, ValvePlace } from '../evidence.ts';
import type { ShimRow } from '../lash/detail.ts';
import { backOffSaid, withoutGap } from '../lash/no-gap.ts';
import { isShut } from '../lash/shim-said.ts';
import { shimsOf } from '../lash/shims.ts';
import { sinkingPlaces } from '../lash/sinking.ts';
import type { NoiseDetail } from '../noise/detail.ts';
import { turnMade } from '../workings/turn-made.ts';
import { MUST, MUST_TURN, type Need, need, TURN, worked } from './need.ts';

/** A hydraulic lifter has no gap: how far its plunger is pressed down is what was set. */
const isHydraulic = ({ engine }: Evidence): boolean => isHydraulicLifter(engine.lifter);

const preload = (evidence: Evidence): Need =>
  need(
    'preload',
    'the turns past zero lash, and on which thread',
    'Let the lifter bleed down, find zero by up-and-down play, then count the turns. Say which thread it is.',
    worked(evidence, 'lifter-preload') || worked(evidence, 'adjuster'),
    MUST_TURN,
  );

/** Of a bucket there is no nut; on a call about noise it has a question of its own. */
const lash = (evidence: Evidence, { active, damaged }: NoiseDetail): Need =>
  need(
    'lash',
    'a lash as it was found or set',
    active && damaged
      ? 'The gap as it was found is gone with that part. Once it is changed set the lash, lock it, and enter it as set.'
      : active || evidence.engine.gear === 'bucket'
        ? 'Read the lash as found, before anything is set.'
        : `Read the lash as found, before anything is set, and look whether the ${ADJUSTER_WORDS[adjusterKind(evidence.engine)].part} has moved.`,
    evidence.lash.some(({ standing }) => standing),
    MUST_TURN,
  );

/** A turn that was worked out from a gap, and no valve was found at it: its gap goes into the log, with its valve. */
function turnsValve(evidence: Evidence): Need[] {
  const sum = lastKept(evidence, 'turns');
  const from = sum?.set.lashFound;
  if (sum === undefined || from === undefined || evidence.engine.gear === 'bucket') return [];
  const { waiting, made, twice, against } = turnMade(sum, evidence);
  const isKnown = [...waiting, ...made, ...twice].length > 0;
  if (isKnown || against.some(inDoubt)) return [];
  return [
    need(
      'turn-valve',
      'which valve the turn is for',
      `Ask which valve was found at ${inches(from)}, and enter it in the lash log.`,
      false,
      { ...MUST, askAtBench: `Say which valve was found at ${inches(from)}, and enter it in the lash log.` },
    ),
  ];
}

/** A valve without a gap may be held open: its adjuster is backed off before anything else is read or set. */
function backOff(evidence: Evidence): Need[] {
  const standing = evidence.lash.filter((line) => line.standing).toSorted(byPlace);
  const places = [...new Map(standing.map((line) => [placeOf(line), line])).values()];
  return withoutGap(places, evidence)
    .slice(0, 1)
    .map((line) =>
      need(
        'back-off',
        `a gap at ${placeOf(line)}`,
        `${upperFirst(placeOf(line))}: ${backOffSaid(evidence)}`,
        false,
        { ...MUST, begun: true },
      ),
    );
}

/** Set last; of a noise one that was found before, and set again since: how it was set at first is read as it is found. */
function isSetNow(evidence: Evidence, place: ValvePlace, active: boolean): boolean {
  const lines = lashLogOf(evidence, place);
  return lines.at(-1)?.moment === 'set' && (!active || lines.some(({ moment }) => moment === 'found'));
}

/** Locking shifts a gap, and what was set is only known once it is read again. */
function readAgain(evidence: Evidence, { active }: NoiseDetail): Need[] {
  if (evidence.engine.gear === 'bucket') return [];
  const places = [...new Map(evidence.lash.map((line) => [placeOf(line), line])).values()].toSorted(byPlace);
  const set = places.filter((place) => isSetNow(evidence, place, active)).map(placeOf);
  const [first, ...others] = set;
  if (first === undefined) return [];
  const named = others.length < 3 ? listed(set) : `${first} and of ${others.length} others that were set`;
  return [
    need(
      'lash-again',
      `the gap of ${named} since it was set`,
      `Read the gap of ${named} again, locked and at the same heat, and say whether the lock held.`,
      false,
      active ? TURN : MUST_TURN,
    ),
  ];
}

/** What is lacked most often goes first: of the card or the engine it is lacked by every valve. */
function firstLacked(rows: readonly ShimRow[]): { readonly row: ShimRow; readonly lack: Lack } | undefined {
  const all = rows.flatMap((row) => row.lacks.map((lack) => ({ row, lack })));
  const times = ({ code }: Lack): number => all.filter(({ lack }) => lack.code === code).length;
  return all.toSorted((a, b) => times(b.lack) - times(a.lack))[0];
}

/** Once a lash is there, the shim that each valve wants is the answer; on a call about noise it can wait. */
function shimFigures(evidence: Evidence, { active }: NoiseDetail): Need[] {
  const first = firstLacked(shimsOf(evidence).detail.rows);
  if (first === undefined) return [];
  const { row, lack } = first;
  const place = placeOf(row);
  return [
    need(
      'shim-figures',
      `${lack.said}, for the shim of ${place}`,
      isShut(row)
        ? `${upperFirst(place)} has no gap: a thinner shim goes in first, then the gap is measured.`
        : `Get this for the shim of ${place}: ${lack.said}.`,
      false,
      active ? {} : isShut(row) || lack.turns ? MUST_TURN : MUST,
    ),
  ];
}

const shims = (evidence: Evidence, noise: NoiseDetail): Need[] => [
  need(
    'shims',
    'the shim that is in, with each lash',
    'Measure the shim that is in each valve, and enter it with its lash.',
    evidence.lash.some(({ standing, shim }) => standing && shim !== undefined),
  ),
  ...shimFigures(evidence, noise),
];

/** Every valve of the log is as it should be, or a shop looks at it first: nothing is left to be turned. */
function isDone(evidence: Evidence): boolean {
  const standing = evidence.lash.filter((line) => line.standing);
  const sinking = sinkingPlaces(evidence);
  return (
    standing.length > 0 &&
    standing.every((line) => sinking.has(placeOf(line)) || lashDone(evidence, line) !== undefined)
  );
}

/** Valves found at a gap that no kept turn was worked out from, and that is not as it should be. */
function withoutSum(evidence: Evidence): LashEvidence[] {
  const sums = allKept(evidence, 'turns').map((kept) => turnMade(kept, evidence));
  // Which gap holds, and of which valve a turn is, is asked first.
  if (sums.some(({ twice, against }) => [...twice, ...against].some(inDoubt))) return [];
  const told = new Set(sums.flatMap(({ waiting, made }) => [...waiting, ...made]).map(placeOf));
  const sinking = sinkingPlaces(evidence);
  const standing = evidence.lash.filter((line) => line.standing).toSorted(byPlace);
  const places = [...new Map(standing.map((line) => [placeOf(line), line])).values()];
  if (told.size === 0) return [];
  return places.flatMap((place) => {
    const now = usableLash(evidence, place);
    const waits =
      now?.moment === 'found' &&
      now.gap.value !== undefined &&
      now.gap.value > 0 &&
      !sinking.has(placeOf(place)) &&
      lashDone(evidence, place) === undefined &&
      !told.has(placeOf(place));
    return waits ? [now] : [];
  });
}

/** A turn is worked out from one gap: a valve found at another has none yet. */
function turns(evidence: Evidence): Need {
  const left = withoutSum(evidence);
  const [first, ...others] = left;
  if (first === undefined)
    return need(
      'turns',
      'what the turns of the adjuster do',
      'Give thread and turns of the adjuster.',
      worked(evidence, 'adjuster') || isDone(evidence),
    );
  const named =
    others.length < 3
      ? listed(left.map((each) => `${placeOf(each)}, found at ${inches(each.gap.value ?? 0)}`))
      : `${placeOf(first)}, found at ${inches(first.gap.value ?? 0)}, and of ${others.length} others`;
  return need('turns', `the turn of ${named}`, `Work out the turn of ${named}, in the same way.`, false);
}

/**
 * With buckets the camshaft comes out for a shim: every gap is read first, so that shims can change places. Once one was set
 * it has been out.
 */
function otherGaps(evidence: Evidence): Need[] {
  const { cylinders, gear } = evidence.engine;
  if (gear !== 'bucket' || cylinders === undefined) return [];
  const standing = evidence.lash.filter((line) => line.standing);
  const read = new Set(standing.map(placeOf));
  const all = Array.from({ length: cylinders }, (_, at) => at + 1).flatMap((cylinder) =>
    valveNames(evidence).map((valve) => placeOf({ cylinder, valve })),
  );
  const left = all.filter((place) => !read.has(place));
  if (read.size === 0 || left.length === 0 || standing.some(({ moment }) => moment === 'set')) return [];
  const named = left.length > 3 ? `the ${left.length} other valves` : listed(left);
  return [
    need(
      'other-gaps',
      `the gap of ${named}, before a camshaft comes out`,
      `Read the gap of ${named} too, before a camshaft comes out: a shim may go from one valve to another.`,
      false,
      MUST_TURN,
    ),
  ];
}

/** Setting one again whose gap grew, or that is noisy, hides it: its cause is asked after, not the turns. */
export function ofAdjuster(evidence: Evidence, noise: NoiseDetail): Need[] {
  if (isHydraulic(evidence)) return noise.active ? [] : [preload(evidence)];
  const valve = noise.active ? [] : turnsValve(evidence);
  return [
    ...backOff(evidence),
    ...valve,
    ...(valve.length > 0 && evidence.lash.every(({ standing }) => !standing) ? [] : [lash(evidence, noise)]),
    ...readAgain(evidence, noise),
    ...(evidence.engine.gear === 'bucket' ? shims(evidence, noise) : []),
    ...(noise.active ? [] : otherGaps(evidence)),
    ...(noise.active ? [] : [turns(evidence)]),
  ];
}
