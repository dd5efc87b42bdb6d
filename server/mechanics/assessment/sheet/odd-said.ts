import type { OddValve } from '../../valve-sheet/types.ts';
import { inches } from '../common/said.ts';

const off = (what: string, by: number): string =>
  `${what} ${inches(Math.abs(by))} ${by < 0 ? 'low' : 'high'}`;

/** Why a valve is the odd one, without what to do about it: that is what it still needs. */
export function oddSaid({ cause, valveOff, words }: OddValve): string {
  if (valveOff === undefined) return words;
  if (cause === 'measure-lobe')
    return `${off('Valve lift', valveOff)}; nothing tells cam from rocker while its lobe is not known.`;
  if (cause === 'cannot-tell') return `${off('Valve lift', valveOff)}: within what repeats give.`;
  return words;
}

/** What tells it from its siblings, before any part is moved. */
export function oddNeeds({ cause }: OddValve): string[] {
  if (cause === 'measure-lobe') return ['a reading of its lobe; no part has to move for that'];
  return cause === 'cannot-tell' ? ['three passes each of lobe and valve'] : [];
}
