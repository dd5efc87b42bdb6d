import type { Evidence, Side } from '../../../../server/mechanics/assessment/evidence.ts';
import { DEG, IN, LBF, LBF_PER_IN } from '../../../../server/mechanics/kit/si.ts';
import { defined } from '../../../../shared/defined.ts';
import type { Goal } from '../../../../shared/schemas/goals.ts';
import type { Chance } from '../../explain-readings/random.ts';

/** Invented figures within what such engines have; the laws hold for any of them, so none needs a source. */

export const maybe = <T>(chance: Chance, probability: number, make: () => T): T | undefined =>
  chance.happens(probability) ? make() : undefined;

/** The keys whose value is known. */
export function known<T extends object>(given: { [Key in keyof T]?: T[Key] | undefined }): Partial<T>;
export function known(given: object): object {
  return defined(given);
}

export const thou = (inches: number): number => (Math.round(inches * 1000) / 1000) * IN;

const GOALS: readonly Goal[] = [
  'identify',
  'verify-ratio',
  'verify-ratio',
  'choose-ratio',
  'clearances-after-a-change',
  'geometry',
  'cam-timing',
  'adjuster',
  'one-valve-differs',
  'noise-or-failure',
  'returned-part',
];

export const RATIOS = [1.5, 1.52, 1.55, 1.6, 1.65, 1.7, 1.73] as const;

function card(chance: Chance, lobe: number): Evidence['card']['intake'] {
  const lobeLift = maybe(chance, 0.85, () => thou(lobe + chance.between(-0.0025, 0.0025)));
  return known<Evidence['card']['intake']>({
    lobeLift: chance.happens(0.03) ? thou(lobe * 1.6) : lobeLift,
    valveLift: maybe(chance, 0.4, () => thou(lobe * chance.pick(RATIOS))),
    centreline: maybe(chance, 0.6, () => chance.between(102, 114) * DEG),
    lash: maybe(chance, 0.5, () => thou(chance.between(0.008, 0.026))),
    durations: maybe(chance, 0.5, () => [
      { atLift: 0.006 * IN, duration: chance.between(260, 300) * DEG },
      { atLift: 0.05 * IN, duration: chance.between(210, 250) * DEG },
    ]),
  });
}

/** What is true of the engine, beside what is known of it. */
export interface TrueEngine {
  /** Half of the callers read with care: states are said, and few mistakes are made. */
  readonly careful: boolean;
  readonly lobe: Readonly<Record<Side, number>>;
  readonly nominal: number;
  readonly ratio: number;
}

export function trueEngine(chance: Chance): TrueEngine {
  const intake = chance.between(0.27, 0.42);
  const exhaust = chance.happens(0.4) ? intake : intake + chance.between(-0.02, 0.02);
  const nominal = chance.pick(RATIOS);
  const over = chance.happens(0.15) ? chance.between(-0.06, 0.06) : chance.between(-0.01, 0.045);
  return { careful: chance.happens(0.5), lobe: { intake, exhaust }, nominal, ratio: nominal * (1 + over) };
}

/** What it is built of and for, and other ratios that are thought of. */
function builtFor(chance: Chance) {
  return {
    engine: known<Pick<Evidence['engine'], 'use' | 'rodMaterial' | 'studSize'>>({
      use: maybe(chance, 0.4, () => chance.pick(['street', 'race'] as const)),
      rodMaterial: maybe(chance, 0.3, () => chance.pick(['steel', 'aluminium'] as const)),
      studSize: maybe(chance, 0.3, () => chance.pick(['5/16', '3/8', '7/16'] as const)),
    }),
    alsoPlanned: chance.happens(0.15) ? [chance.pick(RATIOS)] : undefined,
  };
}

export function knownEngine(chance: Chance, engine: TrueEngine) {
  const open = known<Evidence['taken']['intake']>;
  const taken = () =>
    open({
      closedGapAtTdc: maybe(chance, 0.5, () => thou(chance.between(0.3, 0.6))),
      pistonFloor: maybe(chance, 0.5, () => chance.pick(['pocket', 'flat'] as const)),
      pushrodToHead: maybe(chance, 0.4, () => thou(chance.between(0.01, 0.12))),
      lobeLiftAtClosest: maybe(chance, 0.2, () => thou(chance.between(0.02, 0.2))),
    });
  const built = builtFor(chance);
  return {
    engine: known<Evidence['engine']>({
      ...built.engine,
      cylinders: maybe(chance, 0.8, () => chance.pick([4, 6, 8])),
      lifter: maybe(chance, 0.7, () =>
        chance.pick(['solid-flat', 'solid-roller', 'hydraulic-flat'] as const),
      ),
      mounting: maybe(chance, 0.7, () => chance.pick(['stud', 'pedestal', 'shaft'] as const)),
      coverBolting: maybe(chance, 0.4, () => chance.pick(['through-centre', 'perimeter'] as const)),
      stroke: maybe(chance, 0.6, () => 3.48 * IN),
      rodLength: maybe(chance, 0.6, () => 5.7 * IN),
      pinOffset: undefined,
      valveAngle: maybe(chance, 0.5, () => chance.between(10, 25) * DEG),
      firingOrder: maybe(chance, 0.3, () => '18436572'),
      bankOrder: undefined,
    }),
    card: {
      ...known<Evidence['card']>({ assumedRatio: maybe(chance, 0.6, () => chance.pick(RATIOS)) }),
      intake: card(chance, engine.lobe.intake),
      exhaust: card(chance, engine.lobe.exhaust),
    },
    springs: known<Evidence['springs']>({
      installedHeight: maybe(chance, 0.6, () => thou(chance.between(1.75, 2.05))),
      seatLoad: maybe(chance, 0.6, () => chance.between(100, 220) * LBF),
      rate: maybe(chance, 0.6, () => chance.between(280, 480) * LBF_PER_IN),
      solidHeight: maybe(chance, 0.6, () => thou(chance.between(1.0, 1.2))),
      retainerToSeal: maybe(chance, 0.5, () => thou(chance.between(0.6, 0.85))),
    }),
    rockers: known<Evidence['rockers']>({
      soldAs: maybe(chance, 0.6, () => (engine.careful ? engine.nominal : chance.pick(RATIOS))),
      planned: maybe(chance, 0.3, () => chance.pick(RATIOS)),
      alsoPlanned: built.alsoPlanned,
      pivotToTip: maybe(chance, 0.4, () => thou(chance.between(1.4, 1.55))),
    }),
    taken: { intake: taken(), exhaust: taken() },
  } satisfies Partial<Evidence>;
}

export const callOf = (chance: Chance, { careful }: TrueEngine): Evidence['call'] => ({
  goal: chance.pick(GOALS),
  ...(chance.happens(0.1)
    ? { hold: { reason: 'a pushrod came out bent', line: 1, since: '2026-03-14' } }
    : {}),
  contact: chance.happens(0.06)
    ? 'something'
    : careful
      ? 'none'
      : chance.pick(['none', 'none', 'not-asked'] as const),
  engineState: careful
    ? 'apart'
    : chance.pick(['not-asked', 'runs', 'has-run', 'apart', 'never-run'] as const),
  closed: chance.happens(0.1),
});
