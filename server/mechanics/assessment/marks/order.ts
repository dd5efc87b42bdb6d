import { EQUAL } from '../../kit/nearest.ts';
import { INK } from '../../tip-mark/least-width.ts';
import { toldOver } from '../../tip-mark/length-said.ts';
import { alongRocker } from '../../tip-mark/next-length.ts';
import type { LengthOver, Mark } from '../../tip-mark/types.ts';
import { byId } from '../common/said.ts';
import type { ArmEvidence, TipMarkEvidence } from '../evidence.ts';

/** Off sideways by no more than ink is read to is the middle: nothing is lined up for it. */
const sideOf = ({ side, off }: TipMarkEvidence): Mark['side'] =>
  side === 'sideways' && off !== undefined && off <= INK + EQUAL ? 'centred' : side;

/** What the arm is marked with by which it is known as one of a kind. */
const armsSaid = (armId: string | undefined, arms: readonly ArmEvidence[]): string | undefined =>
  arms.find(({ id }) => id === armId)?.ratioStamp || undefined;

/** A mark as the mechanics have it, with how it came about; `arms` where it is set against those of other arms. */
export const markOf = (mark: TipMarkEvidence, arms: readonly ArmEvidence[] = []): Mark => {
  const { width, off, pushrod, shims, found, spring, armId } = mark;
  return {
    width,
    off,
    pushrod,
    shims,
    side: sideOf(mark),
    worn: found === 'after-running' ? true : undefined,
    spring,
    arms: armsSaid(armId, arms),
  };
};

/** How far from the middle along the rocker; one of which only the side was told goes behind those with a figure. */
const away = ({ side, off }: TipMarkEvidence): number =>
  side === 'sideways' ? (off ?? 0) : Math.abs(alongRocker({ side, off }) ?? Number.MAX_VALUE);

/**
 * The marks of a valve with the one to judge last: width comes first, then place, as the trade looks at them. Which was
 * entered first says nothing.
 */
export function worstToBest(marks: readonly TipMarkEvidence[]): TipMarkEvidence[] {
  const narrowest = Math.min(...marks.map(({ width }) => width));
  const wide = (mark: TipMarkEvidence) => (mark.width <= narrowest + INK + EQUAL ? 0 : mark.width);
  // Where some are told with what they were made with, one of which that is not known is no setting to go on from.
  const unset = ({ pushrod, shims }: TipMarkEvidence) => Number(pushrod === undefined && shims === undefined);
  return marks.toSorted(
    (a, b) =>
      unset(b) - unset(a) || wide(b) - wide(a) || away(b) - away(a) || b.width - a.width || byId(a, b),
  );
}

const isAlike = (one: number | undefined, other: number | undefined): boolean =>
  one === other || (one !== undefined && other !== undefined && Math.abs(one - other) <= EQUAL);

/** Sideways, and none was inked lengthwise at its setting: such a one shows that it was lined up. */
const isSidewaysStill = (mark: TipMarkEvidence, all: readonly TipMarkEvidence[]): boolean =>
  sideOf(mark) === 'sideways' &&
  !all.some(
    (other) =>
      sideOf(other) !== 'sideways' &&
      isAlike(other.pushrod, mark.pushrod) &&
      isAlike(other.shims, mark.shims),
  );

/**
 * The same with one that is sideways still as the one to judge: no length is gone by before it is square. Which was entered
 * first says nothing.
 */
export function squareFirst(marks: readonly TipMarkEvidence[]): readonly TipMarkEvidence[] {
  const judged = marks.findLast((mark) => isSidewaysStill(mark, marks));
  return judged === undefined ? marks : [...marks.filter((mark) => mark !== judged), judged];
}

/** The marks of a valve with their lengths told one way: as that of the one that is judged, where both ways are told. */
interface OneWay {
  readonly marks: readonly TipMarkEvidence[];
  readonly over: LengthOver | undefined;
  readonly bothWays: boolean;
}

/** Lengths told over the ends and by a gauge are set against each other in one way; told in one way they stay so. */
export function inOneConvention(marks: readonly TipMarkEvidence[]): OneWay {
  const withLength = marks.filter(({ pushrod }) => pushrod !== undefined);
  const said = withLength.flatMap(({ pushrodOver }) => pushrodOver ?? []);
  const over = withLength.findLast(({ pushrodOver }) => pushrodOver !== undefined)?.pushrodOver;
  return {
    marks: marks.map((mark) =>
      over === undefined || mark.pushrodOver === undefined || mark.pushrod === undefined
        ? mark
        : { ...mark, pushrod: toldOver(mark.pushrod, mark.pushrodOver, over), pushrodOver: over },
    ),
    over,
    bothWays: new Set(said).size > 1,
  };
}
