import { sideOfValve } from '../../../../../shared/schemas/words.ts';
import { allowance } from '../../../kit/allowances.ts';
import { pairsOf } from '../../../valve-sheet/pairs.ts';
import { byPlace, placeOf } from '../../common/said.ts';
import type { Evidence, Side, ValvePlace } from '../../evidence.ts';
import type { ArmLot } from '../rows/lots-of-swaps.ts';

/** One arm on one valve, read in one way. */
export interface SwapCell {
  readonly armId: string;
  readonly at: ValvePlace;
  /** Left out where nothing was read there, or what was read does not go together. */
  readonly lift?: number;
  readonly half: number;
  readonly passes: number;
  readonly restsOn: readonly string[];
  /** The arm sits there now, so that it can be read. */
  readonly now: boolean;
}

/** Two arms that have both sat on the same two valves. */
export interface Swap {
  /** That of its first valve. */
  readonly side: Side;
  /** One of its valves is an intake and the other an exhaust: their lobes and siblings are not alike. */
  readonly across?: true;
  readonly arms: readonly [string, string];
  readonly places: readonly [ValvePlace, ValvePlace];
}

const keyed = (armId: string, place: ValvePlace): string => `${armId}\n${placeOf(place)}`;

type Sat = ValvePlace & { readonly armId: string };

const satOf = (
  all: readonly (ValvePlace & { readonly armId?: string })[],
  sides: readonly Side[],
): { readonly been: readonly Sat[]; readonly keys: ReadonlySet<string> } => {
  const been = all
    .filter(({ valve }) => sides.includes(sideOfValve(valve)))
    .flatMap(({ armId, cylinder, valve }) => (armId === undefined ? [] : [{ armId, cylinder, valve }]));
  return { been, keys: new Set(been.map((each) => keyed(each.armId, each))) };
};

/** Three that were read are a swap, whatever was said of where they sat: of one arm on two valves, and of two on one. */
const ENOUGH_READ = 3;

/** Of each arm on each valve, the two ways in which both can sit at once. */
const waysRound = ([a1, a2, b1, b2]: readonly string[]): string[][] =>
  [
    [a1, b2],
    [a2, b1],
  ].map((way) => way.flatMap((key) => key ?? []));

const isAcross = ([one, other]: readonly ValvePlace[]): boolean =>
  one !== undefined && other !== undefined && sideOfValve(one.valve) !== sideOfValve(other.valve);

/**
 * Every two arms that the record has on the same two valves: put there, read there, or read on three of the four. Of
 * one side both valves are of it; of two sides one is of each.
 */
export function swapsMade(
  { seats, sat: put = [], arms: named }: Evidence,
  lots: readonly ArmLot[],
  sides: readonly Side[],
): Swap[] {
  const { been, keys: sat } = satOf([...lots, ...seats, ...put], sides);
  const [read, now] = [lots, seats].map((all) => satOf(all, sides).keys);
  const isRead = (key: string) => read?.has(key) === true;
  const sitsNow = (key: string) => now?.has(key) === true;
  const nameOf = (id: string) => `${named.find((arm) => arm.id === id)?.name ?? ''}\n${id}`;
  const arms = [...new Set(been.map(({ armId }) => armId))].sort((a, b) => (nameOf(a) < nameOf(b) ? -1 : 1));
  const places = [
    ...new Map(
      been.map(({ cylinder, valve }) => [placeOf({ cylinder, valve }), { cylinder, valve }]),
    ).values(),
  ].sort(byPlace);
  return pairsOf(arms).flatMap((pair) =>
    pairsOf(places)
      .filter((two) => isAcross(two) === sides.length > 1)
      .filter((two) => {
        const four = pair.flatMap((armId) => two.map((place) => keyed(armId, place)));
        if (four.filter(isRead).length >= ENOUGH_READ) return true;
        // Put right before anything was read, a place is no move: of each way round something was read, or it is so now.
        const isSeen = (key: string) => isRead(key) || sitsNow(key);
        const moved =
          four.some((key) => isRead(key) && !sitsNow(key)) &&
          waysRound(four).every((way) => way.some(isSeen));
        return four.every((key) => (moved ? sat.has(key) : isSeen(key)));
      })
      .map(
        (two): Swap => ({
          side: sideOfValve(two[0].valve),
          arms: pair,
          places: two,
          ...(isAcross(two) ? { across: true as const } : {}),
        }),
      ),
  );
}

/** Lots of one arm on one valve together; where they lie farther apart than they repeat, none of them counts. */
function together(lots: readonly ArmLot[]): Pick<SwapCell, 'lift' | 'half' | 'passes' | 'restsOn'> {
  const half = Math.max(allowance('repeat'), ...lots.map((lot) => lot.half));
  const known = lots.flatMap(({ value, passes }) => (value === undefined ? [] : [{ value, passes }]));
  const count = known.reduce((sum, { passes }) => sum + passes, 0);
  const base = { half, passes: count, restsOn: lots.flatMap(({ restsOn }) => restsOn) };
  const values = known.map(({ value }) => value);
  const apart = values.length === 0 ? 0 : Math.max(...values) - Math.min(...values);
  if (known.length < Math.max(1, lots.length) || apart > 2 * allowance('repeat')) return base;
  return { ...base, lift: known.reduce((sum, { value, passes }) => sum + value * passes, 0) / count };
}

/** The four readings of a swap, of one way of reading: each arm on each valve. */
export function cellsOf({ seats }: Evidence, swap: Swap, lots: readonly ArmLot[]): SwapCell[] {
  return swap.places.flatMap((at) =>
    swap.arms.map((armId): SwapCell => {
      const own = lots.filter((lot) => lot.armId === armId && placeOf(lot) === placeOf(at));
      const now = seats.some((seat) => seat.armId === armId && placeOf(seat) === placeOf(at));
      return { armId, at, now, ...together(own) };
    }),
  );
}
