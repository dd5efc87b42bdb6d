import { allowance } from '../kit/allowances.ts';
import { EQUAL } from '../kit/nearest.ts';
import { medianOf } from '../statistics/median.ts';
import { FEWEST_WITH_MIDDLE, haveMiddle } from './siblings.ts';
import type { SheetValve, SideJudged } from './types.ts';

/** A lobe that lies this far off the middle of its siblings is down on them by the wear limit or more. */
const isDown = (off: number): boolean => off <= -allowance('lobe-down') + EQUAL;

/**
 * Whether lobes have a middle that one of them can be down on: one that is more than half the wear limit off it is as near
 * to being worn as to being like it.
 */
const lobesHaveMiddle = (lobes: readonly number[]): boolean => haveMiddle(lobes, allowance('lobe-down') / 2);

/** By how much a lobe is down on the others [m], where that is the wear limit or more and they have a middle together. */
export function downOnOthers(lobe: number, others: readonly number[]): number | undefined {
  const all = [lobe, ...others];
  const repeat = allowance('repeat');
  // What is halved, or what no two agree on, is down on nothing.
  if (!lobesHaveMiddle(all)) return undefined;
  // Between one that is high and one like itself it is down on neither.
  if (haveMiddle(all, repeat) && Math.abs(lobe - medianOf(all)) <= repeat + EQUAL) return undefined;
  const off = lobe - medianOf(others);
  return isDown(off) ? -off : undefined;
}

const isRead = <Valve extends { readonly lobeLift?: number | undefined }>(
  valve: Valve,
): valve is Valve & { readonly lobeLift: number } => valve.lobeLift !== undefined;

/** How far lobes lie apart, where that is the wear limit or more and they have no middle that any of them is down on. */
export function lobesApart(valves: readonly SheetValve[]): SideJudged['lobesApart'] {
  const read = valves.filter(isRead);
  const lobes = read.map(({ lobeLift }) => lobeLift);
  if (lobes.length < FEWEST_WITH_MIDDLE || lobesHaveMiddle(lobes)) return undefined;
  const apart = Math.max(...lobes) - Math.min(...lobes);
  return isDown(-apart)
    ? { apart, places: read.map(({ cylinder, valve }) => ({ cylinder, valve })) }
    : undefined;
}

/** Lobes of one side that are so far down on their siblings that they are worn, wherever they were read. */
export function lobesDown(valves: readonly SheetValve[]): SideJudged['lobesDown'] {
  return valves.flatMap(({ cylinder, valve, lobeLift }, index) => {
    const others = valves.flatMap((each, at) => (at === index ? [] : (each.lobeLift ?? [])));
    const by = lobeLift === undefined ? undefined : downOnOthers(lobeLift, others);
    return by === undefined ? [] : [{ cylinder, valve, by }];
  });
}
