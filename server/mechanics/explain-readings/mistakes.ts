import type { Assumptions } from './assumptions.ts';
import { type Case, lobesDiffer } from './case.ts';
import type { Cause, Entry } from './types.ts';

/** How the lobe lift relates to the card under a mistake. */
export type LobeSource = 'card' | 'other-row' | 'other-valve' | 'valve-lift' | 'not-this-lobe';

/** What a mistake does to the model; what it does not name stays ordinary. */
interface Effect {
  readonly turns?: number;
  readonly backwards?: boolean;
  readonly lash?: { readonly mean: number; readonly spread: number };
  readonly tilt?: number;
  readonly zero?: { readonly mean: number; readonly spread: number; readonly absentAtStations: boolean };
  readonly lobe?: LobeSource;
  readonly slip?: Entry;
  readonly valveDivisor?: number;
  readonly cardDivisor?: number;
  readonly readingSpread?: number;
}

/** Mistakes of one group exclude each other. */
type Group = 'dial' | 'lash' | 'tilt' | 'zero' | 'lobe';

/** One thing that can have gone wrong. Two are combined only if both have a group, and not the same. */
export interface Mistake {
  readonly cause: Cause;
  readonly group: Group | undefined;
  readonly chance: number;
  /** The number of equally likely ways in which it happens; the model looks at the best one. */
  readonly ways: number;
  readonly entry?: Entry;
  readonly effect: Effect;
}

const CARD: Entry = { of: 'card' };
const UNIT_FACTORS = [25.4, 1 / 25.4, 10, 0.1] as const;

function mistake(
  cause: Cause,
  group: Group | undefined,
  chance: number,
  effect: Effect,
  entry?: Entry,
): Mistake {
  return { cause, group, chance, ways: 1, effect, ...(entry ? { entry } : {}) };
}

/** Lash stated `zero`, or a hydraulic lifter, makes lash left in rare; stated `set`, common. */
function lashChance(given: Case): number {
  const { assumed } = given;
  if (given.input.lash === 'set') return assumed.lashSet;
  return given.input.lash === 'zero' || given.hydraulic ? assumed.lashZeroOrHydraulic : assumed.lashUnsaid;
}

function tiltChance(given: Case): number {
  const { assumed } = given;
  if (given.input.alignment === 'parallel') return assumed.tiltParallel;
  return given.input.alignment === 'leaning' ? assumed.tiltLeaning : assumed.tiltUnsaid;
}

function atTheDial(given: Case): Mistake[] {
  const a = given.assumed;
  const setting = given.input.lashSetting;
  const lash =
    setting === undefined
      ? { mean: a.lashMean, spread: a.lashSpread }
      : { mean: setting, spread: a.lashSettingSpread };
  return [
    mistake('turn-too-many', 'dial', a.turnTooMany, { turns: 1 }),
    mistake('turn-too-few', 'dial', a.turnTooFew, { turns: -1 }),
    mistake('hand-read-backwards', 'dial', a.handReadBackwards, { backwards: true }),
    mistake('lash-left-in', 'lash', lashChance(given), { lash }),
    mistake('plunger-tilted', 'tilt', tiltChance(given), { tilt: a.tiltSpread }),
    mistake('zero-moved', 'zero', a.zeroMoved, {
      zero: { mean: 0, spread: a.zeroMovedSpread, absentAtStations: false },
    }),
  ];
}

function aboutTheLobe(given: Case): Mistake[] {
  const a = given.assumed;
  if (given.input.cardLobeLift === undefined) return [];
  const rows = lobesDiffer(given)
    ? [
        mistake('wrong-card-row', 'lobe', a.wrongCardRow, { lobe: 'other-row' }, CARD),
        mistake('wrong-valve', 'lobe', a.wrongValve, { lobe: 'other-valve' }),
      ]
    : [];
  return [
    ...rows,
    mistake('valve-lift-as-lobe', 'lobe', a.valveLiftAsLobe, { lobe: 'valve-lift' }, CARD),
    mistake('card-not-this-lobe', 'lobe', a.cardNotThisLobe, { lobe: 'not-this-lobe' }, CARD),
  ];
}

function aboutEntries(given: Case): Mistake[] {
  const a = given.assumed;
  const entries: Entry[] = given.input.readings.map((_, index) => ({ of: 'reading', index }));
  if (given.input.cardLobeLift !== undefined) entries.unshift(CARD);
  const slips = entries.map((entry) => ({
    ...mistake('slip', undefined, a.slip, { slip: entry }, entry),
    ways: a.slipWays,
  }));
  const firstOdd = given.oddReadings.indexOf(true);
  if (firstOdd < 0) return slips;
  const valve: Entry = { of: 'reading', index: firstOdd };
  const units = UNIT_FACTORS.flatMap((factor) => [
    mistake('unit-or-decimal', undefined, a.unitOrDecimal, { valveDivisor: factor }, valve),
    ...(given.input.cardLobeLift === undefined
      ? []
      : [mistake('unit-or-decimal', undefined, a.unitOrDecimal, { cardDivisor: factor }, CARD)]),
  ]);
  return [...slips, ...units];
}

/** Every mistake that can be made with this input, with the chance of each (dimensionless). */
export function mistakesPossible(given: Case): Mistake[] {
  const a: Assumptions = given.assumed;
  return [
    ...atTheDial(given),
    ...aboutTheLobe(given),
    ...aboutEntries(given),
    mistake('unlisted-fault', undefined, a.unlistedFault, {
      zero: { mean: a.unlistedFaultMean, spread: a.unlistedFaultSpread, absentAtStations: true },
    }),
    mistake('passes-scatter', undefined, a.passesScatter, { readingSpread: a.passesScatterSpread }),
  ];
}
