import { isHydraulicLifter } from '../../../../shared/lifters.ts';
import { sideOfValve } from '../../../../shared/schemas/words.ts';
import { ADJUSTER_WORDS, adjusterKind } from '../../lash/adjuster-words.ts';
import type { EnteredAt } from '../assessment.ts';
import { inDoubt } from '../common/asked.ts';
import { chosenOf } from '../common/chosen.ts';
import { lastKept } from '../common/kept.ts';
import { lashLogOf } from '../common/lash-log-of.ts';
import { lashWanted } from '../common/lash-wanted.ts';
import { byPlace, inches, listed, placeOf, upperFirst } from '../common/said.ts';
import { hasShims } from '../common/shimmed.ts';
import { valveNames } from '../common/valve-names.ts';
import type { Evidence, ValvePlace } from '../evidence.ts';
import { backOffSaid, withoutGap } from '../lash/no-gap.ts';
import type { LashWork } from '../lash/work.ts';
import type { NoiseDetail } from '../noise/detail.ts';
import { turnMade } from '../workings/turn-made.ts';
import { MUST, MUST_TURN, type Need, need, TURN, worked } from './need.ts';
import { ofFollowerShim, ofShims, otherGaps } from './of-shims.ts';
import { ofTurns } from './of-turns.ts';

/** More valves than so many are not named at once. */
const _FEW = 3;

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

/** Another arm is on than the one that its gap was set or found with: it is set again before anything is told of it. */
function withThisArm(evidence: Evidence): Need[] {
  const standing = evidence.lash.filter((line) => line.standing).toSorted(byPlace);
  const places = [...new Map(standing.map((line) => [placeOf(line), line])).values()];
  const left = places.filter((place) => lashLogOf(evidence, place).length === 0).map(placeOf);
  if (left.length === 0) return [];
  const of = left.length > 3 ? `${left.length} valves` : listed(left);
  return [
    need(
      'lash-of-arm',
      `the gap of ${of} with the arm that is on`,
      `Set the gap of ${of} again with the arm that is on, and enter it as set: what is on record belongs to the arm before.`,
      false,
      { ...MUST_TURN, at: logOf(evidence) },
    ),
  ];
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

/** Valves of which the log has no line: nobody waits for them, and they are not passed over when the answer is said. */
function otherValves(evidence: Evidence): Need[] {
  const { cylinders, gear } = evidence.engine;
  if (gear === 'bucket' || cylinders === undefined) return [];
  const read = new Set(evidence.lash.filter(({ standing }) => standing).map(placeOf));
  const left = cylinders * valveNames(evidence).length - read.size;
  if (read.size === 0 || left <= 0) return [];
  const what = left === 1 ? 'the one valve' : `the ${left} valves`;
  return [
    need(
      'valves',
      `the gap of ${what} that nobody has read`,
      `Read the gap of ${what} left, as found, before anything is set there.`,
      false,
      TURN,
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
    ...withThisArm(evidence),
    ...readAgain(evidence, noise),
    ...atItsHeat(work),
    ...(hasShims(evidence) ? ofShims(evidence, noise, work) : []),
    ...ofFollowerShim(evidence),
    ...(noise.active ? [] : [...otherGaps(evidence), ...otherValves(evidence)]),
    ...(noise.active ? [] : [ofTurns(evidence, work)]),
  ];
}
