import { isHydraulicLifter } from '../../../../shared/lifters.ts';
import { sideOfValve } from '../../../../shared/schemas/words.ts';
import { ADJUSTER_WORDS, adjusterKind } from '../../lash/adjuster-words.ts';
import type { EnteredAt } from '../assessment.ts';
import { inDoubt } from '../common/asked.ts';
import { lastKept } from '../common/kept.ts';
import type { Lack } from '../common/lack.ts';
import { lashDone } from '../common/lash-done.ts';
import { lashLogOf } from '../common/lash-log-of.ts';
import { byPlace, inches, listed, placeOf, upperFirst } from '../common/said.ts';
import type { Evidence, ValvePlace } from '../evidence.ts';
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
    { ...MUST_TURN, at: { part: 'lifter-preload' } },
  );

/** Where a gap goes on record; a bucket's with its shim, in one table with the others. */
const logOf = ({ engine }: Evidence): EnteredAt => ({ part: engine.gear === 'bucket' ? 'shims' : 'lash' });

/** What of a shim is on the card is entered there, and the gap with its heat in the log. */
function atLack(row: ShimRow, { code }: Lack): EnteredAt {
  if (code === 'heat-of-card') return { step: 'cam', field: 'cam.lashAt' };
  return code === 'card-figure'
    ? { step: 'cam', field: `cam.${sideOfValve(row.valve)}.lash` }
    : { part: 'shims' };
}

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
    { ...MUST_TURN, at: logOf(evidence) },
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
      {
        ...MUST,
        at: logOf(evidence),
        askAtBench: `Say which valve was found at ${inches(from)}, and enter it in the lash log.`,
      },
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
        { ...MUST, at: logOf(evidence), begun: true },
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
      { ...(active ? TURN : MUST_TURN), at: logOf(evidence) },
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
      {
        ...(active ? {} : isShut(row) || lack.turns ? MUST_TURN : MUST),
        at: atLack(row, lack),
      },
    ),
  ];
}

const shims = (evidence: Evidence, noise: NoiseDetail): Need[] => [
  need(
    'shims',
    'the shim that is in, with each lash',
    'Measure the shim that is in each valve, and enter it with its lash.',
    evidence.lash.some(({ standing, shim }) => standing && shim !== undefined),
    { at: { part: 'shims', field: 'shim' } },
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

const turns = (evidence: Evidence): Need =>
  need(
    'turns',
    'what the turns of the adjuster do',
    'Give thread and turns of the adjuster.',
    worked(evidence, 'adjuster') || isDone(evidence),
    { at: { part: 'adjuster' } },
  );

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
    ...(noise.active ? [] : [turns(evidence)]),
  ];
}
