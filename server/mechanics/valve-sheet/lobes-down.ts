import { allowance } from '../kit/allowances.ts';
import { medianOf } from '../statistics/median.ts';
import { haveMiddle } from './siblings.ts';
import type { SheetValve, SideJudged } from './types.ts';

const EQUAL = 1e-12;
/** As many others as have a middle. */
const FEWEST = 2;

/** A lobe that lies this far off the middle of its siblings is down on them by the wear limit or more. */
const isDown = (off: number): boolean => off <= -allowance('lobe-down') + EQUAL;

/** By how much a lobe is down on the others [m], where that is the wear limit or more and there are two others at the least. */
export function downOnOthers(lobe: number, others: readonly number[]): number | undefined {
  if (others.length < FEWEST) return undefined;
  const all = [lobe, ...others];
  const repeat = allowance('repeat');
  // Between one that is high and one like itself it is down on neither.
  if (haveMiddle(all, repeat) && Math.abs(lobe - medianOf(all)) <= repeat + EQUAL) return undefined;
  const off = lobe - medianOf(others);
  return isDown(off) ? -off : undefined;
}

/** Lobes of one side that are so far down on their siblings that they are worn, wherever they were read. */
export function lobesDown(valves: readonly SheetValve[]): SideJudged['lobesDown'] {
  return valves.flatMap(({ cylinder, valve, lobeLift }, index) => {
    const others = valves.flatMap((each, at) => (at === index ? [] : (each.lobeLift ?? [])));
    const by = lobeLift === undefined ? undefined : downOnOthers(lobeLift, others);
    return by === undefined ? [] : [{ cylinder, valve, by }];
  });
}
