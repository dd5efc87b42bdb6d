import { type InputFault, InputFaults } from '../../../shared/problems/faults.ts';
import type { LobeCard } from './card-fields.ts';

const CYCLE = 4 * Math.PI;
// A card in degrees that says just 720° must not fail by a rounding of the conversion.
const SLACK = 1e-12;

/** The durations of a card with their places in it, lowest lift first. */
export function byRisingLift(card: LobeCard) {
  return card.durations.map((each, index) => ({ ...each, index })).toSorted((a, b) => a.atLift - b.atLift);
}

type Placed = ReturnType<typeof byRisingLift>[number];

function faultsOfOrder(ordered: readonly Placed[], where: string): InputFault[] {
  return ordered.slice(1).flatMap((higher, place): InputFault[] => {
    const lower = ordered[place] ?? higher;
    if (higher.atLift === lower.atLift) {
      const detail = `is the lift of item ${lower.index} again`;
      return [{ pointer: `${where}/${higher.index}/atLift`, code: 'impossible-input', detail }];
    }
    if (higher.duration < lower.duration) return [];
    const detail = `must be less than that of item ${lower.index}, which is at a lower lift`;
    return [{ pointer: `${where}/${higher.index}/duration`, code: 'impossible-input', detail }];
  });
}

/**
 * Holds a card to what a lobe can be.
 *
 * @param card [1] lengths [m], angles [rad]
 * @param prefix [1] JSON pointer of the card
 * @throws impossible-input when a stated lift is not below the lobe lift, or stands twice
 * @throws impossible-input when a duration is over 720°, or does not fall with rising lift
 * @throws impossible-input when the centreline is over a turn of the crank
 */
export function checkCard(card: LobeCard, prefix: string): void {
  const faults: InputFault[] = [];
  const blame = (pointer: string, detail: string) =>
    faults.push({ pointer: prefix + pointer, code: 'impossible-input', detail });
  if (card.centreline > 2 * Math.PI * (1 + SLACK)) {
    blame('/centreline', 'is more than a turn of the crank from TDC');
  }
  // An item that is at fault by itself says nothing of its neighbours.
  const sound = byRisingLift(card).filter(({ atLift, duration, index }) => {
    const high = atLift >= card.lobeLift;
    const long = duration > CYCLE * (1 + SLACK);
    if (high) blame(`/durations/${index}/atLift`, 'must be below the lobe lift');
    if (long) blame(`/durations/${index}/duration`, 'is more than the whole cycle of 720°');
    return !high && !long;
  });
  faults.push(...faultsOfOrder(sound, `${prefix}/durations`));
  if (faults.length > 0) throw new InputFaults(faults.slice(0, 100));
}
