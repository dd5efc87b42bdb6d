import { sideOfValve } from '../../../../../shared/schemas/words.ts';
import type { SwapOutcome } from '../../../valve-sheet/swap-test.ts';
import type { Evidence } from '../../evidence.ts';
import { claimsOn } from '../../ratio/claims/marks.ts';
import { bandsOf } from '../../ratio/compared/bands.ts';
import type { ArmLot } from '../rows/lots-of-swaps.ts';
import type { Swap } from './swap-cells.ts';

/** One of the four lifts of a swap, brought to the lobe of the two. */
interface Lift {
  readonly arm: string;
  readonly place: string;
  readonly lift: number;
}

interface Named {
  readonly arm?: 0 | 1;
  readonly place?: 0 | 1;
  /** Each arm gives what it is stamped or sold as: they differ because their marks do. */
  readonly asMarked?: boolean;
}

/** A ratio that neither agreement nor room for flex accounts for. */
function isOff(ratio: number, claim: number, half: number): boolean {
  const bands = bandsOf(claim, ratio - half, ratio + half);
  return !bands.includes('within') && !bands.includes('over');
}

const isOrdinary = (ratio: number, claim: number): boolean =>
  bandsOf(claim, ratio, ratio).every((band) => band === 'within' || band === 'over');

/** Read so that a lift may be set against a mark: a light spring, the lash said to be out, a lifter that does not sink. */
const mayBeSetAgainstMark = (lots: readonly ArmLot[]): boolean =>
  lots.length > 0 &&
  lots.every(({ spring, lashOut, method }) => spring === 'light' && lashOut && method.includes('firm'));

/** Which of two is off while the other is ordinary; nothing where both are the one or the other. */
function oneOff(pairs: readonly { readonly off: boolean; readonly ordinary: boolean }[]): 0 | 1 | undefined {
  const [first, second] = pairs;
  if (first === undefined || second === undefined) return undefined;
  if (first.off && second.ordinary) return 0;
  return second.off && first.ordinary ? 1 : undefined;
}

/**
 * Which arm, or which valve, of a swap is the odd one by what the arms are stamped or sold as, where no sibling was read
 * that could tell: the one whose ratio is off while that of the other is ordinary.
 */
export function oddByMark(
  evidence: Evidence,
  swap: Swap,
  outcome: SwapOutcome,
  read: readonly Lift[],
  { lots, lobe }: { readonly lots: readonly ArmLot[]; readonly lobe: number | undefined },
): Named {
  const over = lobe ?? evidence.card[sideOfValve(swap.side)].lobeLift;
  const claims = new Map(swap.arms.map((arm) => [arm, claimsOn(evidence, arm)[0]?.ratio]));
  if (over === undefined || over <= 0 || !mayBeSetAgainstMark(lots)) return {};
  const judged = (of: (lift: Lift) => boolean) => {
    const own = read.filter(of).flatMap(({ arm, lift }) => {
      const claim = claims.get(arm);
      return claim === undefined ? [] : [{ claim, ratio: lift / over }];
    });
    const half = outcome.half / over;
    return {
      off: own.length > 1 && own.every(({ ratio, claim }) => isOff(ratio, claim, half)),
      ordinary: own.length > 1 && own.every(({ ratio, claim }) => isOrdinary(ratio, claim)),
    };
  };
  const arms = swap.arms.map((arm) => judged((lift) => lift.arm === arm));
  const places = outcome.places.map((place) => judged((lift) => lift.place === place));
  const [arm, place] = [oneOff(arms), oneOff(places)];
  if (outcome.verdict === 'part')
    return { ...(arm === undefined ? {} : { arm }), asMarked: arms.every(({ ordinary }) => ordinary) };
  return outcome.verdict === 'position' && place !== undefined ? { place } : {};
}
