import { SIDES } from '../../../../../shared/sides.ts';
import type { Judgement } from '../../assessment.ts';
import { placeOf } from '../../common/said.ts';
import { decidedOf } from '../../common/swap-told.ts';
import type { Evidence, Side, Spring } from '../../evidence.ts';
import type { SheetSwapDetail } from '../rows/detail.ts';
import type { ArmLot } from '../rows/lots-of-swaps.ts';
import { lashMayStay } from './lash-of-place.ts';
import { cellsOf, type Swap, type SwapCell, swapsMade } from './swap-cells.ts';
import { type LobesRead, oddCells, toldByLifts, withCard } from './swap-lifts.ts';
import { needsOf, swapSaid } from './swap-said.ts';

const readIn = (cells: readonly SwapCell[]): number => cells.filter(({ lift }) => lift !== undefined).length;

/** Lots that count, and all there are: what is in doubt shows that a swap was made, and decides nothing. */
interface LotsGiven {
  readonly lots: readonly ArmLot[];
  readonly every: readonly ArmLot[];
}

/** The readings of a swap in one way: on one spring, by one tool. */
interface Way {
  readonly own: readonly ArmLot[];
  readonly cells: readonly SwapCell[];
  readonly spring: Spring;
}

/** Lots of the two arms on the two valves. */
const touchedBy = (swap: Swap, lots: readonly ArmLot[]): ArmLot[] =>
  lots.filter(
    (lot) =>
      lot.armId !== undefined &&
      swap.arms.includes(lot.armId) &&
      swap.places.some((place) => placeOf(place) === placeOf(lot)),
  );

/** Every way in which all four were read tells by itself; where none is whole, the one that has most. One of a spring. */
function tellingWays(evidence: Evidence, swap: Swap, lots: readonly ArmLot[]): Way[] {
  const methods = [...new Set(touchedBy(swap, lots).map(({ method }) => method))].sort();
  const ways = methods.map((method): Way => {
    const own = lots.filter((lot) => lot.method === method);
    return { own, cells: cellsOf(evidence, swap, own), spring: own[0]?.spring ?? 'not-said' };
  });
  const whole = ways.filter(({ cells }) => readIn(cells) === cells.length);
  const most = ways.toSorted((a, b) => readIn(b.cells) - readIn(a.cells)).slice(0, 1);
  return [...new Map((whole.length > 0 ? whole : most).map((way) => [way.spring, way])).values()];
}

const isAt = (lot: ArmLot, { armId, at }: SwapCell): boolean =>
  lot.armId === armId && placeOf(lot) === placeOf(at);

/** What was not read yet, and why it may not count: read in another way, passes apart, or in doubt. */
const missingOf = (
  cells: readonly SwapCell[],
  otherWay: readonly SwapCell[],
  every: readonly ArmLot[],
  nameOf: (id: string) => string,
): SheetSwapDetail['missing'] =>
  cells
    .filter(({ lift }) => lift === undefined)
    .map((cell) => {
      const isDoubted = every.some((lot) => isAt(lot, cell)) && cell.passes === 0 && !otherWay.includes(cell);
      return {
        place: placeOf(cell.at),
        arm: nameOf(cell.armId),
        now: cell.now,
        otherWay: otherWay.includes(cell),
        apart: cell.passes > 0,
        ...(isDoubted ? { inDoubt: true as const } : {}),
      };
    });

const swapId = ({ arms, places }: Swap, spring: Spring): string =>
  ['swap', spring, ...arms, ...places.map((at) => `${at.cylinder}-${at.valve}`)].join(':');

/** What one way of reading tells of a swap. */
function toldIn(
  { own, cells, spring }: Way,
  evidence: Evidence,
  swap: Swap,
  { lots, every }: LotsGiven,
  lobes: LobesRead,
): SheetSwapDetail {
  const nameOf = (id: string) => evidence.arms.find((arm) => arm.id === id)?.name ?? 'an arm';
  const elsewhere = touchedBy(swap, lots).filter((lot) => !own.includes(lot));
  const otherWay = cells.filter(
    (cell) => cell.lift === undefined && elsewhere.some((lot) => isAt(lot, cell)),
  );
  const byLifts = toldByLifts(evidence, cells, own, swap, lobes);
  const stays = byLifts.verdict === 'position' || byLifts.verdict === 'both' ? byLifts.position : 0;
  const lashAt = stays === 0 ? undefined : lashMayStay(evidence, swap, own, stays);
  const outcome =
    lashAt === undefined
      ? byLifts
      : { ...byLifts, verdict: 'cannot-tell' as const, because: 'lash' as const, lashAt };
  const readOdd = oddCells(cells, own, swap, lobes);
  const isSure =
    cells.every(({ lift, passes }) => lift !== undefined || passes === 0) && otherWay.length === 0;
  const ordinary =
    outcome.verdict === 'cannot-tell' &&
    outcome.because !== 'gone' &&
    outcome.because !== 'lash' &&
    isSure &&
    readOdd?.length === 0;
  const alike =
    outcome.verdict === 'cannot-tell' && outcome.because === 'small' && readOdd?.length === cells.length;
  const odd = evidence.arms.find(({ id }) => 'oddArm' in outcome && id === outcome.oddArm);
  return {
    side: swap.side,
    spring,
    arms: swap.arms,
    armNames: [nameOf(swap.arms[0]), nameOf(swap.arms[1])],
    places: [placeOf(swap.places[0]), placeOf(swap.places[1])],
    ...outcome,
    readOdd: (readOdd ?? []).map(({ cell, off }) => ({
      place: placeOf(cell.at),
      arm: nameOf(cell.armId),
      off,
    })),
    ...(alike ? { alike } : {}),
    ...(ordinary ? { ordinary } : {}),
    numberRead: (odd?.otherNumber.trim() ?? '') !== '',
    missing: missingOf(cells, otherWay, every, nameOf),
    judgementId: swapId(swap, spring),
    restsOn: [...new Set(cells.flatMap(({ restsOn }) => restsOn))].sort(),
  };
}

/** What the swaps on record decide, in whatever order arms and readings came. */
export const swapsOf = (
  evidence: Evidence,
  given: LotsGiven,
  sides: readonly Side[],
  lobes: LobesRead,
): SheetSwapDetail[] =>
  swapsMade(evidence, given.every, sides)
    .flatMap((swap) =>
      tellingWays(evidence, swap, given.lots).map((way) => toldIn(way, evidence, swap, given, lobes)),
    )
    // The odd one's own first.
    .toSorted((a, b) => Number(a.readOdd.length === 0) - Number(b.readOdd.length === 0));

/**
 * Swaps between an intake and an exhaust valve, by their lobes: read, or as on the card. They were not made to set
 * siblings against one another: one that decides nothing says nothing.
 */
export const swapsAcross = (evidence: Evidence, given: LotsGiven, lobes: LobesRead): SheetSwapDetail[] =>
  swapsOf(evidence, given, SIDES, withCard(evidence, given.every, lobes)).filter(
    (swap) => decidedOf(swap) !== undefined,
  );

export const swapJudgement = (swap: SheetSwapDetail): Judgement => ({
  id: swap.judgementId,
  about: { of: 'side', valve: swap.side },
  against: { to: 'siblings' },
  sentence: swapSaid(swap),
  lacks: needsOf(swap),
  restsOn: swap.restsOn,
});
