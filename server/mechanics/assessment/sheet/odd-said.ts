import { lowOrHigh } from '../common/said.ts';
import type { SheetOddDetail } from './detail.ts';

const off = (by: number): string => `Valve lift ${lowOrHigh(by)}`;

/** Why a valve is the odd one, without what to do about it: that is what it still needs. */
export function oddSaid({
  cause,
  valveOff,
  lobeOff,
  words,
  armName,
  sinks,
  lash,
  passes,
}: SheetOddDetail): string {
  if (valveOff === undefined) return words;
  if (sinks === true && cause !== 'part' && cause !== 'position')
    return valveOff > 0
      ? `${off(valveOff)}, on a hydraulic lifter: the others read low where theirs sink more, so that comes before the rocker.`
      : `${off(valveOff)}, on a hydraulic lifter: one that sinks reads low, so that comes before the rocker.`;
  if (lash === true)
    return `${off(valveOff)}, as much as its lash, if that was left in: look at that before the rocker.`;
  const lobe = lobeOff === undefined ? '' : ' on a lobe like the others’';
  switch (cause) {
    case 'measure-lobe':
      return `${off(valveOff)}; nothing tells the cam from the rest while ${passes.lobe > 0 ? 'the lobes beside it are' : 'its lobe is'} not known.`;
    case 'cannot-tell':
      return `${off(valveOff)}: within what repeats give.`;
    case 'part':
      return `${off(valveOff)}${lobe}: it is the arm on it, ${armName ?? 'as swapped'}, as the swap told.`;
    case 'position':
      return `${off(valveOff)}${lobe}: it is its position, as the swap told.`;
    default:
      return words;
  }
}

/** What tells it from its siblings, before any part is moved. */
export function oddNeeds({
  cause,
  sinks,
  lash,
  passes,
}: Pick<SheetOddDetail, 'cause' | 'sinks' | 'lash' | 'passes'>): string[] {
  if (sinks === true) return ['a reading on a solid or locked lifter, of it and of one beside it'];
  if (lash === true) return ['whether its lash was out when it was read'];
  if (cause === 'measure-lobe')
    return [
      `a reading of ${passes.lobe > 0 ? 'the lobes beside it' : 'its lobe'}; no part has to move for that`,
    ];
  return cause === 'cannot-tell' ? ['three passes each of lobe and valve'] : [];
}
