import { allowance } from '../../../kit/allowances.ts';
import { inches, listed, lowOrHigh, placeOf } from '../../common/said.ts';
import type { SheetSwapDetail } from '../rows/detail.ts';

type Missing = SheetSwapDetail['missing'][number];

/** What goes with the arm: with the sign that the odd one has; where none is named, of the first against the second. */
export const ofArm = ({ arms, oddArm, part = 0 }: SheetSwapDetail): number =>
  oddArm === undefined || oddArm === arms[0] ? part : -part;
/** The same of what stays on the valve. */
export const ofPlace = ({ places, oddPlace, position = 0 }: SheetSwapDetail): number =>
  oddPlace === undefined || oddPlace === places[0] ? position : -position;

const nameOf = ({ arms, armNames, oddArm }: SheetSwapDetail): string | undefined =>
  oddArm === undefined ? undefined : armNames[oddArm === arms[0] ? 0 : 1];

/** By how much the valve that is odd now is off is said of that valve: one figure, and not a second one beside it. */
const wayOf = (off: number): string => (off < 0 ? 'low' : 'high');

/** What a position is made of; a lobe that was read is taken out of it already. */
function positionOf({ lobesRead, pushrod, heights }: SheetSwapDetail, place: string): string {
  if (pushrod === 'goes') return `the pushrod of ${place}, which it went with`;
  if (heights === 'differs') return `tip or stud height of ${place}, unlike those beside it`;
  const left = [
    ...(lobesRead ? [] : ['lobe']),
    ...(pushrod === undefined
      ? ['lifter', 'pushrod']
      : heights === undefined
        ? ['tip', 'stud', 'lifter']
        : ['lifter']),
  ];
  return `${left.join(', ')} or set-up of ${place}${lobesRead ? ', its lobe being read' : ''}`;
}

function partSaid(swap: SheetSwapDetail): string {
  const name = nameOf(swap);
  const { armNames, part = 0, asMarked } = swap;
  if (asMarked === true)
    return `the difference went with the arm, and each gives what it is held to be: ${armNames[0]} is ${lowOrHigh(part)} against ${armNames[1]} as their marks have it.`;
  if (name === undefined)
    return `the difference went with the arm: ${armNames[0]} is ${lowOrHigh(part)} against ${armNames[1]} on both valves. It is the part; which of the two needs a third valve of that side.`;
  return `the difference went with ${name}, ${wayOf(ofArm(swap))} on both valves. It is the part: ${name}. Only now look at its lot.`;
}

function positionSaid(swap: SheetSwapDetail): string {
  const { oddPlace, places, position = 0 } = swap;
  if (oddPlace === undefined)
    return `the difference stayed on the valve: ${places[0]} is ${lowOrHigh(position)} against ${places[1]} with both arms. It is the position, not the arm: ${positionOf(swap, 'one of the two')}.`;
  return `the difference stayed on ${oddPlace}, ${wayOf(ofPlace(swap))} with both arms. It is the position, not the arm: ${positionOf(swap, oddPlace)}.`;
}

function bothSaid(swap: SheetSwapDetail): string {
  const { oddPlace, part = 0, position = 0 } = swap;
  const [arm, place] = [nameOf(swap) ?? 'the arm', oddPlace ?? 'the valve'];
  return `the difference is split: ${inches(Math.abs(part))} went with ${arm}, ${inches(Math.abs(position))} stayed on ${place}. It is both, the part and the position.`;
}

const cellSaid = ({ place, arm, apart, inDoubt }: Missing): string =>
  `${place} with ${arm}${apart ? ', whose readings lie apart' : inDoubt === true ? ', whose reading is in doubt' : ''}`;

/** What was odd before the arms were moved stays told until the two are read again. */
const oddSaid = ({ readOdd }: SheetSwapDetail): string =>
  readOdd.length === 0
    ? ''
    : ` ${listed(readOdd.map(({ place, arm, off }) => `${place} read ${lowOrHigh(off)} with ${arm}`))}.`;

function notReadSaid(swap: SheetSwapDetail): string {
  const { missing } = swap;
  const other = missing.filter(({ otherWay }) => otherWay);
  const way = other.length === 0 ? '' : ` ${listed(other.map(cellSaid))} was read another way.`;
  const none = missing.filter(({ otherWay }) => !otherWay);
  const wanted = none.length === 0 ? '' : ` Still to be read: ${listed(none.map(cellSaid))}.`;
  return `it cannot be told yet whether it is the part or the position.${oddSaid(swap)}${wanted}${way}`;
}

function cannotTellSaid(swap: SheetSwapDetail): string {
  const { because, part = 0, position = 0, ordinary, places, readOdd, lashAt } = swap;
  if (ordinary === true)
    return 'neither reads unlike the others of its side, so that there is nothing to tell.';
  if (because === 'not-read') return notReadSaid(swap);
  if (lashAt !== undefined)
    return `it cannot be told yet: ${inches(Math.abs(position))} stayed on ${placeOf(lashAt)}, and lash that is left in stays there too. First: ${placeOf(lashAt)} read at zero lash.`;
  if (swap.alike === true)
    return `it cannot be told by these two: ${listed(places)} read ${wayOf(readOdd[0]?.off ?? 0)} with either arm, off alike. Each wants an arm that reads right.`;
  if (because === 'gone')
    return 'it cannot be told: the difference is gone since the arms were moved, so that neither arm nor valve has it by itself. It came from the fitting or from a reading.';
  return `it cannot be told: ${inches(Math.abs(part))} goes with the arm and ${inches(Math.abs(position))} stays on the valve, each within the ${inches(allowance('odd-beyond'))} that siblings differ by.`;
}

const SAID = {
  part: partSaid,
  position: positionSaid,
  both: bothSaid,
  'cannot-tell': cannotTellSaid,
} as const;

/** The one that was not read would only show it again. */
const fourthSaid = ({ ofThree, missing }: SheetSwapDetail): string =>
  ofThree === true ? ` Three readings tell that; not read: ${listed(missing.map(cellSaid))}.` : '';

/** What a swap decides, in one of four ways: part, position, both, or not to be told. */
export const swapSaid = (swap: SheetSwapDetail): string =>
  `Swap of ${listed(swap.armNames)} between ${listed(swap.places)}: ${SAID[swap.verdict](swap)}${fourthSaid(swap)}`;

/** What has to be read for a swap that cannot be told: what sits there now first; the rest takes a swap back. */
function readingsWanted({ missing, places }: SheetSwapDetail): string[] {
  const now = missing.filter((cell) => cell.now).map((cell) => `a reading of ${cellSaid(cell)}`);
  const back = missing.filter((cell) => !cell.now).map(cellSaid);
  return [
    ...now,
    ...(back.length === 0
      ? []
      : [`the arms of ${listed(places)} put back, and a reading of ${listed(back)}`]),
    ...(missing.some(({ otherWay }) => otherWay) ? ['the same spring, lifter and lash for all four'] : []),
  ];
}

/** What is left of a position once the pushrods, and then the heights, were looked at. */
function positionNeeds({ places, oddPlace = 'the valve', pushrod, heights }: SheetSwapDetail): string {
  if (pushrod === undefined)
    return `the pushrods of ${listed(places)} swapped, then tip and stud height looked at`;
  if (pushrod === 'goes') return `the length of the pushrod of ${oddPlace} against those beside it`;
  if (heights === undefined) return `tip and stud height of ${oddPlace} looked at`;
  return heights === 'differs'
    ? `the height of tip or stud of ${oddPlace} put right`
    : `the lifter of ${oddPlace}, and how it was set up`;
}

/** What each outcome still needs. */
export function needsOf(swap: SheetSwapDetail): string[] {
  const { verdict, because, places, ordinary, lashAt } = swap;
  if (ordinary === true) return [];
  const arm = nameOf(swap);
  const lot =
    arm === undefined ? 'a reading of a third arm, then the lot of the odd one' : `the lot of ${arm}`;
  const position = positionNeeds(swap);
  if (verdict === 'part') return swap.asMarked === true ? [] : [lot];
  if (verdict === 'position') return [position];
  if (verdict === 'both') return [lot, position];
  if (because === 'not-read') return readingsWanted(swap);
  if (lashAt !== undefined) return [`${placeOf(lashAt)} read at zero lash`];
  if (swap.alike === true) return [`the arms of ${listed(places)} each swapped with one that reads right`];
  if (because === 'gone')
    return [`${listed(places)} read once more; then the arms put back and both read again`];
  return [`three passes each of ${listed(places)} with both arms`];
}
