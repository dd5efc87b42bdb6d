import type { Chance } from '../mechanics/explain-readings/random.ts';
import { drawCall, type TrueCall } from '../mechanics/explain-readings/simulated-call.ts';

/** What the field of a card’s lobe lift takes [in]. */
const [LEAST, MOST] = [0.14, 1];

/**
 * A simulated call that can be entered: a slip of the card that makes a lobe no cam has is refused by its field, and
 * said again before anything rests on it, so that such a call is drawn once more.
 */
export function drawnCall(chance: Chance): TrueCall {
  for (;;) {
    const call = drawCall(chance);
    const { cardLobeLift = LEAST } = call.said;
    if (cardLobeLift >= LEAST && cardLobeLift <= MOST) return call;
  }
}
