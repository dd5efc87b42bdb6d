import type { Belief } from './belief.ts';
import type { Case } from './case.ts';
import { LASH, LOBE, mirrored, SIZE, shapeOf, TILT, ZERO } from './reading-model.ts';

/** The sizes of one account's mistakes as its heaviest hypothesis has them. Lengths in inches. */
export interface Sizes {
  /** The reading that the mistake is shown on, as entered, and what it would be put right. */
  readonly entered: number;
  readonly missingTurn: number;
  readonly extraTurn: number;
  readonly turnedRound: number;
  readonly lash: number;
  /** How far the plunger leans, degrees. */
  readonly lean: number;
  readonly zero: number;
  readonly lobe: number;
  readonly card: number;
  readonly cardEntered: number;
  readonly unslipped: number;
  readonly unitPutRight: number;
}

/** The lean, degrees, that makes a plunger read 1 + tilt of the lift: over on a flat face, else under. */
function leanOf(tilt: number): number {
  const cosine = tilt >= 0 ? 1 / (1 + tilt) : Math.max(-1, 1 + tilt);
  return (Math.acos(cosine) * 180) / Math.PI;
}

function shownReading(given: Case, index: number | undefined) {
  if (index !== undefined) return given.input.readings[index];
  const { readings } = given.input;
  return readings.find((r) => r.of === 'valve-lift' && !r.counted) ?? readings[0];
}

/** Reads the sizes out of hypothesis `i`. */
export function sizesOf(given: Case, belief: Belief, i: number): Sizes {
  const h = belief.hypotheses[i];
  const entry = h?.set.mistakes.find((m) => m.entry?.of === 'reading')?.entry;
  const reading = shownReading(given, entry?.of === 'reading' ? entry.index : undefined);
  const entered = reading?.value ?? 0;
  const perTurn = reading === undefined ? 0 : shapeOf(reading, given.assumed).perTurn;
  const at = i * SIZE;
  return {
    entered,
    missingTurn: entered + perTurn,
    extraTurn: entered - perTurn,
    turnedRound: reading === undefined ? 0 : mirrored(entered, perTurn),
    lash: belief.means[at + LASH] ?? 0,
    lean: leanOf(belief.means[at + TILT] ?? 0),
    zero: belief.means[at + ZERO] ?? 0,
    lobe: belief.means[at + LOBE] ?? 0,
    card: belief.cards[i] ?? 0,
    cardEntered: given.input.cardLobeLift ?? 0,
    unslipped: belief.unslipped[i] ?? 0,
    unitPutRight: entered / (h?.set.valveDivisor ?? 1),
  };
}
