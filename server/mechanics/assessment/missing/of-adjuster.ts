import { isHydraulicLifter } from '../../../../shared/lifters.ts';
import { sideOfValve } from '../../../../shared/schemas/words.ts';
import { ADJUSTER_WORDS, adjusterKind } from '../../lash/adjuster-words.ts';
import type { EnteredAt } from '../assessment.ts';
import { inDoubt } from '../common/asked.ts';
import { chosenOf } from '../common/chosen.ts';
import { allKept, lastKept } from '../common/kept.ts';
import type { Lack } from '../common/lack.ts';
import { lashDone } from '../common/lash-done.ts';
import { lashLogOf } from '../common/lash-log-of.ts';
import { lashWanted } from '../common/lash-wanted.ts';
import { byPlace, inches, listed, placeOf, upperFirst } from '../common/said.ts';
import { hasShims } from '../common/shimmed.ts';
import { usableLash } from '../common/usable-lash.ts';
import { valveNames } from '../common/valve-names.ts';
import type { Evidence, LashEvidence, ValvePlace } from '../evidence.ts';
import type { ShimRow } from '../lash/detail.ts';
import { backOffSaid, withoutGap } from '../lash/no-gap.ts';
import { isShut } from '../lash/shim-said.ts';
import { shimsOf } from '../lash/shims.ts';
import type { LashWork } from '../lash/work.ts';
import type { NoiseDetail } from '../noise/detail.ts';
import { turnMade } from '../workings/turn-made.ts';
import { MUST, MUST_TURN, type Need, need, TURN, worked } from './need.ts';

/** More valves than so many are not named at once. */
const FEW = 3;

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
      : active || hasShims(evidence)
        ? 'Read the lash as found, before anything is set.'
        : `Read the lash as found, before anything is set, and look whether the ${ADJUSTER_WORDS[adjusterKind(evidence.engine)].part} has moved.`,
    evidence.lash.some(({ standing }) => standing),
    { ...MUST_TURN, at: logOf(evidence) },
  );

/** A turn that was worked out from a gap, and no valve was found at it: its gap goes into the log, with its valve. */
function turnsValve(evidence: Evidence): Need[] {
  const sum = lastKept(evidence, 'turns');
  const from = sum?.set.lashFound;
  if (sum === undefined || from === undefined || hasShims(evidence)) return [];
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

/** The heat that the card’s lash is for, where it was set at the other and nothing tells what that should be. */
function cardHeat(evidence: Evidence, place: ValvePlace): 'cold' | 'hot' | undefined {
  const { lashAt } = evidence.card;
  const set = lashLogOf(evidence, place).at(-1);
  const printed = evidence.card[sideOfValve(place.valve)].lash;
  if (set === undefined || printed === undefined || lashAt === undefined) return undefined;
  if (set.engine === 'not-said' || set.engine === lashAt) return undefined;
  return lashWanted(evidence, set) === undefined ? lashAt : undefined;
}

/** Gaps that cannot be set against what they were set to before they are read at its heat. */
const atItsHeat = ({ atHeat }: LashWork): Need[] =>
  atHeat
    .slice(0, 1)
    .map(({ place, heat }) =>
      need(
        'lash-at-heat',
        `the gap of ${placeOf(place)} at the heat it was set at`,
        `Read the gap of ${placeOf(place)} again ${heat === 'not-said' ? 'at the heat it was set at' : `${heat}, as it was set`}, and say whether the lock held.`,
        false,
        MUST_TURN,
      ),
    );

/** The lashes of the sides stand for one another, and somebody said where: that is put right before anything is set. */
function sidesFirst({ sides }: LashWork): Need[] {
  const chosen = sides?.holds === true ? chosenOf(sides.question) : undefined;
  if (chosen === undefined) return [];
  const where = chosen === 'card' ? 'on the card' : 'in the log';
  return [
    need(
      'lash-sides',
      `the lashes of intake and exhaust, put right ${where}`,
      `Put the lashes of intake and exhaust right ${where}.`,
      false,
      { ...MUST, begun: true },
    ),
  ];
}

/** Locking shifts a gap, and what was set is only known once it is read again. */
function readAgain(evidence: Evidence, { active }: NoiseDetail): Need[] {
  if (hasShims(evidence)) return [];
  const places = [...new Map(evidence.lash.map((line) => [placeOf(line), line])).values()].toSorted(byPlace);
  const all = places.filter((place) => isSetNow(evidence, place, active));
  // On a call about noise it is read for its lock, and that tells at the heat of the setting alone.
  const heatOf = (place: ValvePlace) => (active ? undefined : cardHeat(evidence, place));
  const heat = all[0] === undefined ? undefined : heatOf(all[0]);
  const set = all.filter((place) => heatOf(place) === heat).map(placeOf);
  const [first, ...others] = set;
  if (first === undefined) return [];
  const at = heat === undefined ? 'at the same heat' : `${heat}, as the card’s lash is for`;
  const named = others.length < 3 ? listed(set) : `${first} and of ${others.length} others that were set`;
  return [
    need(
      'lash-again',
      `the gap of ${named} since it was set`,
      `Read the gap of ${named} again, locked and ${at}, and say whether the lock held.`,
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

/** Some followers have a screw, others a shim: with that measured what goes in can be worked out. */
const followerShim = (evidence: Evidence): Need[] =>
  evidence.engine.gear !== 'finger-follower' || hasShims(evidence)
    ? []
    : [
        need(
          'shims',
          'the shim over the stem, where one sets the lash',
          'Ask whether a shim over the stem sets the lash; then measure it, and enter it with its lash.',
          false,
        ),
      ];

/** Every valve of the log is as it should be, or a shop looks at it first: nothing is left to be turned. */
function isDone(evidence: Evidence, { sinking }: LashWork): boolean {
  const standing = evidence.lash.filter((line) => line.standing);
  return (
    standing.length > 0 &&
    standing.every((line) => sinking.has(placeOf(line)) || lashDone(evidence, line) !== undefined)
  );
}

/** The valves that a turn is worked out for: found, and not as they should be. */
function toTurn(evidence: Evidence, { sinking }: LashWork): ValvePlace[] {
  const standing = evidence.lash.filter((line) => line.standing);
  const places = [...new Map(standing.map((line) => [placeOf(line), line])).values()].toSorted(byPlace);
  return places.filter(
    (place) =>
      !sinking.has(placeOf(place)) &&
      usableLash(evidence, place)?.moment === 'found' &&
      lashDone(evidence, place) === undefined,
  );
}

/** Valves found at a gap that no kept turn was worked out from, and that is not as it should be. */
function withoutSum(evidence: Evidence, { sinking }: LashWork): LashEvidence[] {
  const sums = allKept(evidence, 'turns').map((kept) => turnMade(kept, evidence));
  // Which gap holds, and of which valve a turn is, is asked first.
  if (sums.some(({ twice, against }) => [...twice, ...against].some(inDoubt))) return [];
  const told = new Set(sums.flatMap(({ waiting, made }) => [...waiting, ...made]).map(placeOf));
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
function turns(evidence: Evidence, work: LashWork): Need {
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
export function ofAdjuster(evidence: Evidence, noise: NoiseDetail, work: LashWork): Need[] {
  if (isHydraulic(evidence)) return noise.active ? [] : [preload(evidence)];
  const valve = noise.active ? [] : turnsValve(evidence);
  return [
    ...sidesFirst(work),
    ...backOff(evidence),
    ...valve,
    ...(valve.length > 0 && evidence.lash.every(({ standing }) => !standing) ? [] : [lash(evidence, noise)]),
    ...readAgain(evidence, noise),
    ...atItsHeat(work),
    ...(hasShims(evidence) ? shims(evidence, noise) : []),
    ...followerShim(evidence),
    ...(noise.active ? [] : otherGaps(evidence)),
    ...(noise.active ? [] : [turns(evidence, work)]),
  ];
}
