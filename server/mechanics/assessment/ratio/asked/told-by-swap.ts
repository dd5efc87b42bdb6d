import { isReadTwice, type LotRead } from '../../../valve-sheet/read-twice.ts';
import { lotsOfSheet, wayOf } from '../../common/lots-of-sheet.ts';
import { placeOf } from '../../common/said.ts';
import type { Evidence } from '../../evidence.ts';
import { meanOf } from '../read/passes.ts';
import type { SetUpRead } from '../read/set-up-read.ts';

const SLIPS: ReadonlySet<string> = new Set(['hand-read-backwards', 'digits-swapped', 'slip']);

/**
 * Slips that go with no part and stay on no valve: what a swap shows a second time was none. Lash that was said to be
 * out is one; where nobody said so it may be in on that valve.
 */
export const isSlip = (code: string, lashSaidOut: boolean): boolean =>
  SLIPS.has(code) || (lashSaidOut && code === 'lash-left-in');

function lotOf({ setUp, valve }: SetUpRead): LotRead[] {
  const { armId, spring, lash } = setUp;
  if (armId === undefined || valve.used.length === 0) return [];
  const way = wayOf(setUp, spring, lash === 'set' ? 'in' : 'out');
  return [{ armId, place: placeOf(setUp), way, lift: meanOf(valve.used) }];
}

/** Lifts of named arms, of set-ups and of the sheet. */
const lotsRead = (evidence: Evidence, all: readonly SetUpRead[]): LotRead[] => [
  ...all.flatMap(lotOf),
  ...lotsOfSheet(evidence),
];

/** The lift of this set-up was read again on the other side of a swap, and something else was read beside it. */
export function isToldTwice(evidence: Evidence, own: SetUpRead, all: readonly SetUpRead[]): boolean {
  const [lot] = lotOf(own);
  if (lot === undefined) return false;
  const others = lotsRead(
    evidence,
    all.filter((each) => each !== own),
  );
  return isReadTwice(lot, [lot, ...others]);
}
