import { allowance } from '../../../kit/allowances.ts';
import type { Judgement } from '../../assessment.ts';
import { lowOrHigh, placeOf, valveSubject } from '../../common/said.ts';
import type { Evidence, ValvePlace } from '../../evidence.ts';
import type { SheetSwapDetail } from '../rows/detail.ts';
import type { LiftLot, SheetRow } from '../rows/rows.ts';
import { middleOfSiblings } from '../rows/siblings-middle.ts';
import { armNameOf } from '../swaps/swap-to-do.ts';

/** `odd-before:…`: what is next is found by it. */
export const ODD_BEFORE = 'odd-before:';

interface OddBefore {
  readonly place: ValvePlace;
  readonly judgement: Judgement;
}

const isToldBy = (swaps: readonly SheetSwapDetail[], place: string, arm: string | undefined): boolean =>
  swaps.some(({ places, arms }) => places.includes(place) && arm !== undefined && arms.includes(arm));

/**
 * Valves that read unlike their siblings with an arm that is not on them any more, and were not read since. Where a swap
 * is on record of it, the swap tells it.
 */
export function oddBefore(
  evidence: Evidence,
  rows: readonly SheetRow[],
  swaps: readonly SheetSwapDetail[],
  doubted: ReadonlySet<string>,
): OddBefore[] {
  return rows.flatMap((row) => {
    const place = placeOf(row);
    const isGone = (lot: LiftLot): boolean =>
      !row.lifts.some(({ spring }) => spring === lot.spring) &&
      !lot.readings.some(({ id }) => doubted.has(id)) &&
      !isToldBy(swaps, place, lot.armId);
    return row.everyLift.filter(isGone).flatMap((lot): OddBefore[] => {
      const middle = middleOfSiblings(rows, row, lot.spring, 'everyLift');
      const off = middle === undefined ? 0 : (lot.figure.value ?? middle) - middle;
      if (Math.abs(off) <= allowance('odd-beyond')) return [];
      const arm = armNameOf(evidence, lot.armId) ?? 'another arm';
      return [
        {
          place: row,
          judgement: {
            id: `${ODD_BEFORE}${lot.spring}:${lot.armId ?? ''}:${row.cylinder}-${row.valve}`,
            about: valveSubject(row),
            against: { to: 'siblings' },
            sentence: `${place} read ${lowOrHigh(off)} with ${arm}, which is not on it now. It is not told yet whether that was the arm.`,
            lacks: [`a reading of ${place} as it sits now`],
            restsOn: lot.readings.map(({ id }) => id).sort(),
          },
        },
      ];
    });
  });
}
