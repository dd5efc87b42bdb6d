import { isNoiseQuestion, NOISE_QUESTIONS } from '../../../../shared/schemas/noise.ts';
import type { CauseName } from '../../noise/causes.ts';
import { type Effect, type Effort, possibleEffects, WEIGHS } from '../../noise/effects.ts';
import { pairsParted, parts } from '../../noise/weigh.ts';
import { placeOf } from '../common/said.ts';
import type { ValvePlace } from '../evidence.ts';
import { QUESTIONS } from './asked.ts';
import type { NoiseCheck } from './detail.ts';
import { LOBE_DOWN, LOBE_LEVEL } from './of-lobe.ts';
import { GREW, STAYED } from './of-record.ts';

/** Taking a part off loses the gap as it was found: it is read before, though that takes turning. */
const EFFORTS: readonly (Effort | 'lash' | 'lobe')[] = ['as-it-stands', 'lash', 'parts-off', 'lobe'];

const HOW: Readonly<Record<Effort, string>> = {
  'as-it-stands': 'asked or seen as it stands',
  'parts-off': 'seen with parts off',
};
const ON_ENGINE = 'read on the engine';

interface Open extends Omit<NoiseCheck, 'pairs'> {
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

const lobe = (place: ValvePlace | undefined): Open => ({
  code: 'lobe',
  thing: 'its lobe lift against its siblings',
  sentence: `Read the lobe ${ofValve(place)} and of two like it at the lifter. Lash is read on the base circle, where a worn nose never shows.`,
  step: 'sheet',
  turns: true,
  how: ON_ENGINE,
  effort: 'lobe',
  effects: [LOBE_DOWN, LOBE_LEVEL],
});

const questions: readonly Open[] = QUESTIONS.map((code) => ({
  code,
  thing: WEIGHS[code].thing,
  sentence: NOISE_QUESTIONS[code].ask,
  step: 'noise',
  turns: false,
  how: HOW[WEIGHS[code].effort],
  effort: WEIGHS[code].effort,
  effects: possibleEffects(code),
}));

/** Damage is asked after first, and then which valve it is: readings count by that. */
const FIRST: readonly string[] = ['noise-signs', 'noise-which'];

/** Before what is chosen by what it parts: the lower the earlier. */
const turnOf = ({ code }: Open): number => (FIRST.includes(code) ? FIRST.indexOf(code) : FIRST.length);

const rank = ({ effort }: Open): number => EFFORTS.indexOf(effort);

/** A check that is still to be made, with the effects that it may have. */
export interface OpenCheck {
  readonly check: NoiseCheck;
  readonly effects: readonly Effect[];
}

/**
 * What is not known and would part two causes that remain: first what is asked or seen as it stands, then the gap as it
 * is found, then what is seen with parts off, then the lobe; in each of these what parts most pairs first, of two alike
 * what parts the first two causes, then the order of the desk.
 *
 * @param causes those that remain, in their order
 * @param known codes of questions and readings that are there
 */
export function openChecks(
  causes: readonly CauseName[],
  known: ReadonlySet<string>,
  place: ValvePlace | undefined,
): OpenCheck[] {
  const [a, b] = causes;
  const partsFirst = ({ effects }: Open): number =>
    a !== undefined && b !== undefined && parts(effects, a, b) ? 1 : 0;
  const left = [...questions, lash(place), lobe(place)]
    .filter(({ code }) => !known.has(code))
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
      check: { ...check, pairs: Math.round(pairs) },
      effects,
    }));
}

/** The first of them that would part these two. */
export const partingCheck = (
  open: readonly OpenCheck[],
  [a, b]: readonly [CauseName, CauseName],
): NoiseCheck | undefined => open.find(({ effects }) => parts(effects, a, b))?.check;

/** Asked or seen as it stands: before anything is turned or comes off. */
export const asItStands = ({ code }: NoiseCheck): boolean =>
  isNoiseQuestion(code) && WEIGHS[code].effort === 'as-it-stands';
