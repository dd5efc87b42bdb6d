import { defined } from '../../../../../shared/defined.ts';
import { sideOfValve } from '../../../../../shared/schemas/words.ts';
import { allowance } from '../../../kit/allowances.ts';
import { medianKnown } from '../../../valve-sheet/siblings.ts';
import { oddOfSwap } from '../../../valve-sheet/swap-odd.ts';
import { withFourth } from '../../../valve-sheet/swap-of-three.ts';
import { type ArmOnValve, swapTests } from '../../../valve-sheet/swap-test.ts';
import { placeOf } from '../../common/said.ts';
import type { Evidence, ValvePlace } from '../../evidence.ts';
import type { ArmLot } from '../rows/lots-of-swaps.ts';
import { oddByMark } from './odd-by-mark.ts';
import type { Swap, SwapCell } from './swap-cells.ts';

/** Lobe lifts by the valve [m]: read, or those of the card where two sides are set against each other. */
export type LobesRead = ReadonlyMap<
  string,
  { readonly value: number; readonly half: number; readonly ofCard?: true }
>;

/** The card's lobe where none was read: by it a lift of the one side is set against one of the other. */
export function withCard({ card }: Evidence, places: readonly ValvePlace[], lobes: LobesRead): LobesRead {
  const ofCard = places.flatMap((place) => {
    const value = card[sideOfValve(place.valve)].lobeLift;
    return value === undefined || value <= 0
      ? []
      : [[placeOf(place), { value, half: allowance('card-lobe'), ofCard: true as const }] as const];
  });
  return new Map([...ofCard, ...lobes]);
}

/** Lifts are brought to one lobe where every lobe was read, so that a low lobe is not taken for a low arm. */
function onOneLobe(lobes: LobesRead, swap: Swap) {
  const own = swap.places.flatMap((place) => lobes.get(placeOf(place)) ?? []);
  const mean = own.reduce((sum, { value }) => sum + value, 0) / own.length;
  const all = own.length === swap.places.length;
  return {
    lobesRead: all && own.every(({ ofCard }) => ofCard !== true),
    /** The lobe that the lifts are brought to. */
    lobe: all ? mean : undefined,
    lift(at: ValvePlace, lift: number): number | undefined {
      // Two lobes that nobody read or printed are not held to be alike on an intake and an exhaust.
      if (!all) return swap.across === true ? undefined : lift;
      const lobe = lobes.get(placeOf(at));
      return lobe === undefined ? undefined : (lift * mean) / lobe.value;
    },
    half(at: ValvePlace, lift: number): number {
      const lobe = all ? lobes.get(placeOf(at)) : undefined;
      return lobe === undefined ? 0 : (lift * lobe.half) / lobe.value;
    },
  };
}

/** A valve of that side with an arm of its own: it took no part in the swap. */
const isBeside = (lot: ArmLot, swap: Swap): boolean =>
  swap.across !== true &&
  sideOfValve(lot.valve) === swap.side &&
  !swap.places.some((place) => placeOf(place) === placeOf(lot)) &&
  !(lot.armId !== undefined && swap.arms.includes(lot.armId));

/** The middle of the valves that took no part in the swap, read the same way. */
function siblingsOf(lots: readonly ArmLot[], swap: Swap, lobes: ReturnType<typeof onOneLobe>) {
  const others = lots.filter((lot) => isBeside(lot, swap));
  return medianKnown(others.map((lot) => (lot.value === undefined ? undefined : lobes.lift(lot, lot.value))));
}

/** As many valves beside the two as make a middle. */
const FEWEST = 2;

/** What of the four is unlike the valves that took no part, by how much [m]; nothing where too few of those were read. */
export function oddCells(
  cells: readonly SwapCell[],
  lots: readonly ArmLot[],
  swap: Swap,
  lobesRead: LobesRead,
): readonly { readonly cell: SwapCell; readonly off: number }[] | undefined {
  const lobes = onOneLobe(lobesRead, swap);
  const others = lots.filter((lot) => isBeside(lot, swap) && lot.value !== undefined);
  const middle = siblingsOf(lots, swap, lobes);
  if (middle === undefined || others.length < FEWEST) return undefined;
  return cells.flatMap((cell) => {
    const lift = cell.lift === undefined ? undefined : lobes.lift(cell.at, cell.lift);
    const off = lift === undefined ? 0 : lift - middle;
    return Math.abs(off) > allowance('odd-beyond') ? [{ cell, off }] : [];
  });
}

/** The two as they sit now differ by what counts. */
function showsNow(cells: readonly SwapCell[]): boolean {
  const lifts = cells.flatMap(({ now, lift }) => (now && lift !== undefined ? [lift] : []));
  return lifts.length > 1 && Math.max(...lifts) - Math.min(...lifts) > allowance('odd-beyond');
}

/** Arm and place that are named, and the difference that each makes, with its sign. */
export function toldByLifts(
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
  // What sits there now can be read: three tell only where the fourth takes a swap back.
  const isLeft = cells.some(({ lift, now }) => lift === undefined && now);
  const three = isLeft ? undefined : withFourth(read);
  const found = toldBy(evidence, cells, lots, swap, { lobes, read: three?.all ?? read });
  // By three only what was read twice is named; anything else waits for the fourth.
  const isNamed =
    found !== undefined &&
    (found.asMarked === true || found.oddArm === three?.arm || found.oddPlace === three?.place);
  if (found !== undefined && (three === undefined || found.because === 'small')) return found;
  return found === undefined || !isNamed || found.verdict === 'both'
    ? NOT_READ(lobes.lobesRead)
    : { ...found, ofThree: true as const };
}

const NOT_READ = (lobesRead: boolean) =>
  ({ verdict: 'cannot-tell', because: 'not-read', lobesRead, showsNow: false }) as const;

/** What four lifts tell, in one way of reading. */
function toldBy(
  evidence: Evidence,
  cells: readonly SwapCell[],
  lots: readonly ArmLot[],
  swap: Swap,
  { lobes, read }: { readonly lobes: ReturnType<typeof onOneLobe>; readonly read: readonly ArmOnValve[] },
) {
  const [outcome] = swapTests(read);
  if (outcome === undefined) return undefined;
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
