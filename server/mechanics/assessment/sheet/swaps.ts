import { defined } from '../../../../shared/defined.ts';
import { sideOfValve } from '../../../../shared/schemas/words.ts';
import { allowance } from '../../kit/allowances.ts';
import { medianKnown } from '../../valve-sheet/siblings.ts';
import { oddOfSwap } from '../../valve-sheet/swap-odd.ts';
import { swapTests } from '../../valve-sheet/swap-test.ts';
import type { Judgement } from '../assessment.ts';
import { placeOf } from '../common/said.ts';
import type { Evidence, Side, ValvePlace } from '../evidence.ts';
import type { SheetSwapDetail } from './detail.ts';
import type { ArmLot } from './lots-of-swaps.ts';
import { oddByMark } from './odd-by-mark.ts';
import { cellsOf, type Swap, type SwapCell, swapsMade } from './swap-cells.ts';
import { needsOf, swapSaid } from './swap-said.ts';

/** Lobe lifts that were read, by the valve [m]. */
export type LobesRead = ReadonlyMap<string, { readonly value: number; readonly half: number }>;

/** Lifts are brought to one lobe where every lobe was read, so that a low lobe is not taken for a low arm. */
function onOneLobe(lobes: LobesRead, swap: Swap) {
  const own = swap.places.flatMap((place) => lobes.get(placeOf(place)) ?? []);
  const mean = own.reduce((sum, { value }) => sum + value, 0) / own.length;
  const all = own.length === swap.places.length;
  return {
    lobesRead: all,
    /** The lobe that the lifts are brought to. */
    lobe: all ? mean : undefined,
    lift(at: ValvePlace, lift: number): number | undefined {
      if (!all) return lift;
      const lobe = lobes.get(placeOf(at));
      return lobe === undefined ? undefined : (lift * mean) / lobe.value;
    },
    half(at: ValvePlace, lift: number): number {
      const lobe = all ? lobes.get(placeOf(at)) : undefined;
      return lobe === undefined ? 0 : (lift * lobe.half) / lobe.value;
    },
  };
}

/** The middle of the valves that took no part in the swap, read the same way. */
function siblingsOf(lots: readonly ArmLot[], swap: Swap, lobes: ReturnType<typeof onOneLobe>) {
  const others = lots.filter(
    (lot) =>
      sideOfValve(lot.valve) === swap.side &&
      !swap.places.some((place) => placeOf(place) === placeOf(lot)) &&
      !(lot.armId !== undefined && swap.arms.includes(lot.armId)),
  );
  return medianKnown(others.map((lot) => (lot.value === undefined ? undefined : lobes.lift(lot, lot.value))));
}

/** The two as they sit now differ by what counts. */
function showsNow(cells: readonly SwapCell[]): boolean {
  const lifts = cells.flatMap(({ now, lift }) => (now && lift !== undefined ? [lift] : []));
  return lifts.length > 1 && Math.max(...lifts) - Math.min(...lifts) > allowance('odd-beyond');
}

/** Arm and place that are named, and the difference that each makes, with its sign. */
function told(
  evidence: Evidence,
  cells: readonly SwapCell[],
  lots: readonly ArmLot[],
  swap: Swap,
  lobesRead: LobesRead,
) {
  const lobes = onOneLobe(lobesRead, swap);
  const read = cells.flatMap(({ armId, at, lift, half }) => {
    const value = lift === undefined ? undefined : lobes.lift(at, lift);
    if (value === undefined) return [];
    return [{ arm: armId, place: placeOf(at), lift: value, half, placeHalf: lobes.half(at, value) }];
  });
  const [outcome] = swapTests(read);
  if (outcome === undefined)
    return {
      verdict: 'cannot-tell',
      because: 'not-read',
      lobesRead: lobes.lobesRead,
      showsNow: false,
    } as const;
  const middle = read.reduce((sum, { lift }) => sum + lift, 0) / read.length;
  const bySiblings = oddOfSwap(outcome, middle, siblingsOf(lots, swap, lobes));
  const four = lots.filter((lot) =>
    cells.some(({ restsOn }) => lot.restsOn.some((id) => restsOn.includes(id))),
  );
  const byMark = oddByMark(evidence, swap, outcome, read, { lots: four, lobe: lobes.lobe });
  const { arm, place } = { ...byMark, ...bySiblings };
  const { verdict, because, part, position, half } = outcome;
  return {
    verdict,
    ...defined({ because }),
    part,
    position,
    half,
    lobesRead: lobes.lobesRead,
    showsNow: showsNow(cells),
    ...defined({
      oddArm: arm === undefined ? undefined : outcome.arms[arm],
      oddPlace: place === undefined ? undefined : outcome.places[place],
      oddAt:
        place === undefined ? undefined : swap.places.find((each) => placeOf(each) === outcome.places[place]),
      asMarked: byMark.asMarked === true && arm === undefined ? true : undefined,
    }),
  };
}

const readIn = (cells: readonly SwapCell[]): number => cells.filter(({ lift }) => lift !== undefined).length;

/** Lots that count, and all there are: what is in doubt shows that a swap was made, and decides nothing. */
interface LotsGiven {
  readonly lots: readonly ArmLot[];
  readonly every: readonly ArmLot[];
}

function ofSwap(
  evidence: Evidence,
  swap: Swap,
  { lots, every }: LotsGiven,
  lobes: LobesRead,
): SheetSwapDetail[] {
  const nameOf = (id: string) => evidence.arms.find((arm) => arm.id === id)?.name ?? 'an arm';
  const touched = lots.filter(
    (lot) =>
      lot.armId !== undefined &&
      swap.arms.includes(lot.armId) &&
      swap.places.some((place) => placeOf(place) === placeOf(lot)),
  );
  const ways = [...new Set(touched.map(({ method }) => method))].sort().map((method) => {
    const own = lots.filter((lot) => lot.method === method);
    return { own, cells: cellsOf(evidence, swap, own), spring: own[0]?.spring ?? 'not-said' };
  });
  // Every way in which all four were read tells by itself; where none is whole, the one that has most.
  const whole = ways.filter(({ cells }) => readIn(cells) === cells.length);
  const most = ways.toSorted((a, b) => readIn(b.cells) - readIn(a.cells)).slice(0, 1);
  const springs = new Map((whole.length > 0 ? whole : most).map((way) => [way.spring, way]));
  return [...springs.values()].map(({ own, cells, spring }) => {
    const otherWay = cells.filter(
      ({ lift, armId, at }) =>
        lift === undefined &&
        touched.some((lot) => lot.armId === armId && placeOf(lot) === placeOf(at) && !own.includes(lot)),
    );
    const outcome = told(evidence, cells, own, swap, lobes);
    const odd = evidence.arms.find(({ id }) => 'oddArm' in outcome && id === outcome.oddArm);
    return {
      side: swap.side,
      spring,
      arms: swap.arms,
      armNames: [nameOf(swap.arms[0]), nameOf(swap.arms[1])],
      places: [placeOf(swap.places[0]), placeOf(swap.places[1])],
      ...outcome,
      numberRead: (odd?.otherNumber.trim() ?? '') !== '',
      missing: cells
        .filter(({ lift }) => lift === undefined)
        .map((cell) => ({
          place: placeOf(cell.at),
          arm: nameOf(cell.armId),
          now: cell.now,
          otherWay: otherWay.includes(cell),
          apart: cell.passes > 0,
          ...(every.some((lot) => lot.armId === cell.armId && placeOf(lot) === placeOf(cell.at)) &&
          cell.passes === 0 &&
          !otherWay.includes(cell)
            ? { inDoubt: true as const }
            : {}),
        })),
      judgementId: [
        'swap',
        spring,
        ...swap.arms,
        ...swap.places.map((at) => `${at.cylinder}-${at.valve}`),
      ].join(':'),
      restsOn: [...new Set(cells.flatMap(({ restsOn }) => restsOn))].sort(),
    };
  });
}

/** What the swaps on record decide, in whatever order arms and readings came. */
export const swapsOf = (
  evidence: Evidence,
  given: LotsGiven,
  side: Side,
  lobes: LobesRead,
): SheetSwapDetail[] =>
  swapsMade(evidence, given.every, side).flatMap((swap) => ofSwap(evidence, swap, given, lobes));

export const swapJudgement = (swap: SheetSwapDetail): Judgement => ({
  id: swap.judgementId,
  about: { of: 'side', valve: swap.side },
  against: { to: 'siblings' },
  sentence: swapSaid(swap),
  lacks: needsOf(swap),
  restsOn: swap.restsOn,
});
