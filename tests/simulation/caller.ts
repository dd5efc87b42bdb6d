import type { Chance } from '../mechanics/explain-readings/random.ts';
import type { TrueCall } from '../mechanics/explain-readings/simulated-call.ts';

/** A lash or a lean that somebody who looks for it sees: from memory. */
const SEEN_LASH = 0.004;
const SEEN_TILT = 0.0025;
/** Looking at the zero finds one that moved, and one that did not, so often: the design note. */
const ZERO_FOUND = 0.9;
const ZERO_FOUND_ELSE = 0.05;

/** Doubts about the card: found to be so, its row is put right. */
const OF_CARD: ReadonlySet<string> = new Set([
  'valve-swapped',
  'wrong-card-row',
  'wrong-valve',
  'gross-lift-as-lobe',
  'valve-lift-as-lobe',
  'card-not-this-lobe',
]);

/** What somebody finds who looks for what is asked: whether it was so, and what is put right then. */
export function found(chance: Chance, call: TrueCall, code: string): 'card' | 'reading' | undefined {
  const { mistakes, slipsFirst, cardSlipped } = call;
  const so = (is: boolean) => (is ? (OF_CARD.has(code) ? 'card' : 'reading') : undefined);
  switch (code) {
    case 'turn-miscounted':
    case 'turn-too-many':
    case 'turn-too-few':
      return so(call.turns !== 0 || slipsFirst);
    case 'hand-read-backwards':
      return so(call.backwards);
    case 'lash-left-in':
      return so(call.lash > SEEN_LASH);
    case 'plunger-tilted':
    case 'alignment-not-said':
      return so(Math.abs(call.tilt - 1) > SEEN_TILT);
    case 'zero-not-returned':
    case 'zero-moved':
      return so(chance.happens(call.zero === 0 ? ZERO_FOUND_ELSE : ZERO_FOUND));
    case 'valve-swapped':
    case 'wrong-card-row':
    case 'wrong-valve':
      return so(mistakes.has('wrong-card-row') || mistakes.has('wrong-valve'));
    case 'gross-lift-as-lobe':
    case 'valve-lift-as-lobe':
      return so(mistakes.has('valve-lift-as-lobe') || cardSlipped);
    case 'card-not-this-lobe':
      return so(mistakes.has('card-not-this-lobe') || cardSlipped);
    case 'slip':
    case 'digits-swapped':
    case 'decimal-slip':
      return slipsFirst ? 'reading' : cardSlipped ? 'card' : undefined;
    default:
      return undefined;
  }
}
