import { defined } from '../../../../shared/defined.ts';
import { isNoiseQuestion, type NoiseQuestion } from '../../../../shared/schemas/noise.ts';
import type { ValveGear } from '../../../../shared/schemas/words.ts';
import type { AdjusterKind } from '../../lash/adjuster-words.ts';
import type { CauseName } from '../../noise/causes.ts';
import { type Effect, type Effort, possibleEffects, WEIGHS } from '../../noise/effects.ts';
import { LIFTER_WORDS } from '../../noise/lifter-words.ts';
import { noiseWords } from '../../noise/noise-words.ts';
import { pairsParted, parts } from '../../noise/weigh.ts';
import { placeOf } from '../common/said.ts';
import type { ValvePlace } from '../evidence.ts';
import { SEAT_LOOKED } from '../lash/seat-looked.ts';
import { QUESTIONS } from './answers.ts';
import type { NoiseCheck } from './detail.ts';
import { APART, TOUCHING } from './of-gaps.ts';
import { LOBE_DOWN, LOBE_LEVEL } from './of-lobe.ts';
import { GREW, STAYED } from './of-record.ts';

/** Taking a part off loses the gap as it was found: it is read before, though that takes turning. */
const EFFORTS: readonly (Effort | 'lash' | 'turned')[] = ['as-it-stands', 'lash', 'parts-off', 'turned'];

const HOW: Readonly<Record<Effort, string>> = {
  'as-it-stands': 'asked or seen as it stands',
  'parts-off': 'seen with parts off',
};
const ON_ENGINE = 'read on the engine';

interface Open extends Omit<NoiseCheck, 'pairs' | 'apart'> {
  readonly effort: (typeof EFFORTS)[number];
  readonly effects: readonly Effect[];
}

const ofValve = (place: ValvePlace | undefined): string =>
  place === undefined ? 'of the valve that makes the noise' : `of ${placeOf(place)}`;

const lash = (place: ValvePlace | undefined): Open => ({
  code: 'lash',
  thing: 'the gap as found, against what it was set to',
  sentence: `Read the lash ${ofValve(place)} as found, at the heat it was set at, before any part comes off: after that it is lost.`,
  step: 'adjuster',
  turns: true,
  how: ON_ENGINE,
  effort: 'lash',
  effects: [GREW.held, GREW.moved, STAYED],
});

/** A hydraulic lifter has no lash; with parts off nothing is left to read of one. */
const lashOf = ({ place, hydraulic, partsOff }: CheckedFor): Open[] =>
  hydraulic || partsOff ? [] : [lash(place)];

/** Where a lobe is read: what rides on the cam itself has no lifter to put a plunger on. */
const AT: Readonly<Record<ValveGear, string>> = {
  pushrod: 'at the lifter',
  bucket: 'at the bucket',
  'finger-follower': 'on the cam itself, over nose and base',
  'cam-rocker': 'on the cam itself, over nose and base',
};

const lobe = ({ place, gear }: Pick<CheckedFor, 'place' | 'gear'>): Open => ({
  code: 'lobe',
  thing: 'its lobe lift against the others',
  sentence: `Read the lobe ${ofValve(place)} and of two like it ${AT[gear]}. Lash is read on the base circle, where a worn nose never shows.`,
  step: 'sheet',
  turns: true,
  how: ON_ENGINE,
  effort: 'turned',
  effects: [LOBE_DOWN, LOBE_LEVEL],
});

const questionsFor = ({ adjuster }: Pick<CheckedFor, 'adjuster'>): Open[] =>
  QUESTIONS.map((code) => {
    const { thing, ask } = noiseWords(code, adjuster);
    return {
      code,
      thing,
      sentence: ask,
      step: 'noise',
      turns: false,
      how: HOW[WEIGHS[code].effort],
      effort: WEIGHS[code].effort,
      effects: possibleEffects(code),
    };
  });

/** What bends a pushrod, or lets a valve meet something: asked for only once something speaks for it. */
const touching = (place: ValvePlace | undefined): Open => ({
  code: 'touching',
  thing: 'room to coil bind, piston to valve and cam timing',
  sentence: `Measure room to coil bind and piston to valve ${ofValve(place)} on a solid lifter, and check the cam timing.`,
  step: 'sheet',
  turns: true,
  how: ON_ENGINE,
  effort: 'turned',
  effects: [TOUCHING, APART],
});

const LIFTER = 'lifter';

/** On a solid lifter there is a lash to read, on a hydraulic one there is none. */
const lifterOf = ({ gear }: Pick<CheckedFor, 'gear'>): Open => ({
  code: LIFTER,
  thing: LIFTER_WORDS[gear].thing,
  sentence: LIFTER_WORDS[gear].ask,
  step: 'build',
  turns: false,
  how: HOW['as-it-stands'],
  effort: 'as-it-stands',
  effects: [],
});

/** A gap that closed: nothing is turned, and nothing else of that valve is asked before somebody looked. */
const seat = (place: ValvePlace | undefined): Open => ({
  code: SEAT_LOOKED,
  thing: 'what a qualified shop finds at valve and seat',
  sentence: `Leave the gap alone, and have a qualified shop look at valve and seat ${place === undefined ? 'of the valve that closed' : `of ${placeOf(place)}`}.`,
  step: 'adjuster',
  turns: false,
  how: HOW['as-it-stands'],
  effort: 'as-it-stands',
  effects: [
    { for: ['seat'], against: [] },
    { for: [], against: ['seat'] },
  ],
});

/** What holds the rockers says whether there is a stud to ask about. */
const MOUNTING: Open = {
  code: 'mounting',
  thing: 'how the rockers are mounted',
  sentence: 'Are the rockers on studs, on pedestals or on a shaft?',
  step: 'build',
  turns: false,
  how: HOW['as-it-stands'],
  effort: 'as-it-stands',
  effects: [],
};

/** Damage is asked after first, then what lifters and mounting it has, and which valve it is: the rest counts by that. */
const FIRST: readonly string[] = ['noise-signs', SEAT_LOOKED, LIFTER, MOUNTING.code, 'noise-which'];

/** Asked before everything else, whatever it would part. */
export const comesFirst = ({ code }: Pick<NoiseCheck, 'code'>): boolean => FIRST.includes(code);

/** What is said again after `not known`: nothing is turned before it is looked at. */
const SIGNS_AGAIN = 'Open the filter and look at the oil before anything is turned. What is in it?';

/** Before what is chosen by what it parts: the lower the earlier. */
const turnOf = ({ code }: Open): number => (FIRST.includes(code) ? FIRST.indexOf(code) : FIRST.length);

const rank = ({ effort }: Open): number => EFFORTS.indexOf(effort);

/** The two causes that stand first of those that one of the effects would part. */
function firstParted(
  effects: readonly Effect[],
  causes: readonly CauseName[],
): readonly [CauseName, CauseName] | undefined {
  for (const [at, one] of causes.entries()) {
    const other = causes.slice(at + 1).find((each) => parts(effects, one, each));
    if (other !== undefined) return [one, other];
  }
  return undefined;
}

/** What the checks are made for. */
export interface CheckedFor {
  readonly place: ValvePlace | undefined;
  readonly gear: ValveGear;
  /** What sets its gap: it is asked after in its words. */
  readonly adjuster: AdjusterKind;
  /** Causes that something speaks for. */
  readonly suspected: readonly CauseName[];
  /** Signs of damage were asked after, and nobody knew. */
  readonly asked: boolean;
  readonly hydraulic: boolean;
  /** The gap as it was found is gone. */
  readonly partsOff: boolean;
  /** The engine has the part that is asked about. */
  readonly isAsked: (question: NoiseQuestion) => boolean;
}

/** A check that is still to be made, with the effects that it may have. */
export interface OpenCheck {
  readonly check: NoiseCheck;
  readonly effects: readonly Effect[];
}

/**
 * What is not known and would tell two causes apart that remain: first what is asked or seen as it stands, then the gap as it
 * is found, then what is seen with parts off, then the lobe; in each of these what parts most pairs first, of two alike
 * what parts the first two causes, then the order of the desk.
 *
 * @param causes those that remain and are near the first, in their order
 * @param known codes of questions and readings that are there
 */
export function openChecks(
  causes: readonly CauseName[],
  known: ReadonlySet<string>,
  checked: CheckedFor,
): OpenCheck[] {
  const { place, suspected, asked } = checked;
  const [a, b] = causes;
  const partsFirst = ({ effects }: Open): number =>
    a !== undefined && b !== undefined && parts(effects, a, b) ? 1 : 0;
  const touches = suspected.includes('touching') ? [touching(place)] : [];
  const left = [
    ...questionsFor(checked),
    lifterOf(checked),
    MOUNTING,
    ...lashOf(checked),
    lobe(checked),
    ...touches,
    ...(suspected.includes('seat') ? [seat(place)] : []),
  ]
    .map((open) => (open.code === 'noise-signs' && asked ? { ...open, sentence: SIGNS_AGAIN } : open))
    .filter(({ code }) => !known.has(code) && (!isNoiseQuestion(code) || checked.isAsked(code)))
    .map((open) => ({ open, pairs: pairsParted(open.effects, causes) }))
    .filter(({ open, pairs }) => pairs > 0 || FIRST.includes(open.code));
  return left
    .toSorted(
      (one, other) =>
        turnOf(one.open) - turnOf(other.open) ||
        rank(one.open) - rank(other.open) ||
        other.pairs - one.pairs ||
        partsFirst(other.open) - partsFirst(one.open),
    )
    .map(({ open: { effort: _, effects, ...check }, pairs }) => ({
      check: { ...check, pairs: Math.round(pairs), ...defined({ apart: firstParted(effects, causes) }) },
      effects,
    }));
}

/** The first of them that would part these two. */
export const partingCheck = (
  open: readonly OpenCheck[],
  [a, b]: readonly [CauseName, CauseName],
): NoiseCheck | undefined => open.find(({ effects }) => parts(effects, a, b))?.check;

/** Asked or seen as it stands: before anything is turned or comes off. */
export const asItStands = ({ code }: Pick<NoiseCheck, 'code'>): boolean =>
  code === LIFTER ||
  code === MOUNTING.code ||
  code === SEAT_LOOKED ||
  (isNoiseQuestion(code) && WEIGHS[code].effort === 'as-it-stands');

/** Read at last, with the engine turned. */
export const readAtLast = ({ code }: Pick<NoiseCheck, 'code'>): boolean =>
  code === 'lobe' || code === 'touching';
