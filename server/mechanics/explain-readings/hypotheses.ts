import type { Case } from './case.ts';
import type { Effect, LobeSource, Mistake } from './mistakes.ts';

/** One account of the readings: a ratio and up to two mistakes, with its weight before any reading. */
export interface Hypothesis {
  /** Index into the names; -1 for a ratio that is not listed. */
  readonly name: number;
  readonly ratioMean: number;
  readonly ratioSpread: number;
  readonly mistakes: readonly Mistake[];
  readonly logWeight: number;
  readonly turns: number;
  readonly backwards: boolean;
  readonly lashMean: number;
  readonly lashSpread: number;
  readonly tiltSpread: number;
  readonly zeroMean: number;
  readonly zeroSpread: number;
  readonly zeroAtStations: boolean;
  /** A new set-up of the indicator puts the zero right. */
  readonly zeroRenewed: boolean;
  readonly lobe: LobeSource;
  readonly valveDivisor: number;
  readonly cardDivisor: number;
  /** Index of the reading that slipped, -1 for none. */
  readonly slippedReading: number;
  readonly slippedCard: boolean;
  readonly readingSpread: number;
}

function merged(mistakes: readonly Mistake[]): Effect {
  const [first, second] = mistakes;
  return { ...first?.effect, ...second?.effect };
}

function hypothesis(
  given: Case,
  ratio: Pick<Hypothesis, 'name' | 'ratioMean' | 'ratioSpread'>,
  mistakes: readonly Mistake[],
  logWeight: number,
): Hypothesis {
  const a = given.assumed;
  const effect = merged(mistakes);
  return {
    ...ratio,
    mistakes,
    logWeight,
    turns: effect.turns ?? 0,
    backwards: effect.backwards ?? false,
    lashMean: effect.lash?.mean ?? 0,
    lashSpread: effect.lash?.spread ?? a.ordinaryLashSpread,
    tiltSpread: effect.tilt ?? a.ordinaryTiltSpread,
    zeroMean: effect.zero?.mean ?? 0,
    zeroSpread: effect.zero?.spread ?? a.dialHalfWidth / Math.sqrt(3),
    zeroAtStations: !(effect.zero?.absentAtStations ?? false),
    zeroRenewed: effect.zero !== undefined,
    lobe: effect.lobe ?? 'card',
    valveDivisor: effect.valveDivisor ?? 1,
    cardDivisor: effect.cardDivisor ?? 1,
    slippedReading: effect.slip?.of === 'reading' ? effect.slip.index : -1,
    slippedCard: effect.slip?.of === 'card',
    readingSpread: effect.readingSpread ?? a.readingSpread,
  };
}

/**
 * Two mistakes are thought of together only if both have a group and the groups differ. A mistake
 * without a group stands alone: the reading of the design note that gives its worked cases (with
 * slips, faults, scatter and units in pairs too, five of the seven rows miss).
 */
function canJoin(first: Mistake, second: Mistake): boolean {
  return first.group !== undefined && second.group !== undefined && first.group !== second.group;
}

/** The sets of none, one, or two mistakes from different groups, each with its logarithmic odds. */
function mistakeSets(possible: readonly Mistake[]): { mistakes: Mistake[]; logOdds: number }[] {
  const odds = possible.map((m) => Math.log(m.chance / (1 - m.chance) / m.ways));
  const sets: { mistakes: Mistake[]; logOdds: number }[] = [{ mistakes: [], logOdds: 0 }];
  possible.forEach((first, i) => {
    sets.push({ mistakes: [first], logOdds: odds[i] ?? 0 });
    for (let j = i + 1; j < possible.length; j++) {
      const second = possible[j];
      if (second === undefined || !canJoin(first, second)) continue;
      sets.push({ mistakes: [first, second], logOdds: (odds[i] ?? 0) + (odds[j] ?? 0) });
    }
  });
  return sets;
}

/** Chance of each name before any reading: equal, or mostly the mark's. */
export function nameChances(given: Case): number[] {
  const count = given.nominals.length;
  const { mark } = given.input;
  if (mark === undefined || count === 1) return given.nominals.map(() => 1 / count);
  const { markTrue } = given.assumed;
  return given.nominals.map((name) => (name === mark ? markTrue : (1 - markTrue) / (count - 1)));
}

/** All accounts of the readings that are weighed against each other. */
export function enumerateHypotheses(given: Case, possible: readonly Mistake[]): Hypothesis[] {
  const a = given.assumed;
  const chances = nameChances(given);
  const all: Hypothesis[] = [];
  const sets = mistakeSets(possible);
  given.nominals.forEach((ratioMean, name) => {
    const ratio = { name, ratioMean, ratioSpread: a.ratioSpread * ratioMean };
    const logName = Math.log(chances[name] ?? 0);
    for (const set of sets) all.push(hypothesis(given, ratio, set.mistakes, logName + set.logOdds));
  });
  const unlisted = { name: -1, ratioMean: a.notListedMean, ratioSpread: a.notListedSpread };
  all.push(hypothesis(given, unlisted, [], Math.log(a.ratioNotListed / (1 - a.ratioNotListed))));
  return all;
}
