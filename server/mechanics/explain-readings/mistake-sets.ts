import type { Case } from './case.ts';
import type { LobeSource, Mistake } from './mistakes.ts';

/** None, one or two mistakes made together, and what they make of the model. */
export interface MistakeSet {
  readonly mistakes: readonly Mistake[];
  /** Names the mistakes and their entries; equal for sets that say the same in words. */
  readonly key: string;
  readonly logOdds: number;
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

/** Names a mistake and its entry. */
export function keyOf(mistake: Mistake): string {
  if (mistake.entry === undefined) return mistake.cause;
  return mistake.entry.of === 'card' ? `${mistake.cause}@card` : `${mistake.cause}@${mistake.entry.index}`;
}

function mistakeSet(given: Case, mistakes: readonly Mistake[]): MistakeSet {
  const a = given.assumed;
  const [first, second] = mistakes;
  const effect = { ...first?.effect, ...second?.effect };
  return {
    mistakes,
    key: mistakes.map(keyOf).join('+'),
    logOdds: mistakes.reduce((sum, m) => sum + Math.log(m.chance / (1 - m.chance) / m.ways), 0),
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

/** The sets of none, one, or two mistakes from different groups; the first is the empty one. */
export function mistakeSets(given: Case, possible: readonly Mistake[]): MistakeSet[] {
  const sets = [mistakeSet(given, [])];
  possible.forEach((first, i) => {
    sets.push(mistakeSet(given, [first]));
    for (const second of possible.slice(i + 1)) {
      if (canJoin(first, second)) sets.push(mistakeSet(given, [first, second]));
    }
  });
  return sets;
}
