import { defined } from '../../../../shared/defined.ts';
import { isHydraulicLifter } from '../../../../shared/lifters.ts';
import { sideOfValve } from '../../../../shared/schemas/words.ts';
import type { AssessedQuantity } from '../assessment.ts';
import { type Lack, toSay } from '../common/lack.ts';
import { placeOf } from '../common/said.ts';
import type { ValveRatio } from '../common/valve-ratio.ts';
import type { Evidence } from '../evidence.ts';
import type { SheetDetail, SheetRatioDetail } from './rows/detail.ts';
import { heldOf } from './rows/held.ts';
import { isOfSetBefore } from './rows/rows.ts';
import { LASH_OF_SHEET } from './rows/said-of-sheet.ts';
import { isLashOut } from './sides/group-answered.ts';

/** On a hydraulic lifter there is no lash to leave in; of any other it is lacking until it is said. */
function lashLack(evidence: Evidence, ratio: SheetRatioDetail): Lack[] {
  const { engine } = evidence;
  // Left in, that is lacking of the ratio itself.
  return isHydraulicLifter(engine.lifter) ||
    ratio.lash !== undefined ||
    isLashOut(evidence, sideOfValve(ratio.valve), ratio.spring)
    ? []
    : [
        toSay(
          'lash-unsaid',
          'whether the lash was out when the valves of the per-valve sheet were read',
          LASH_OF_SHEET,
        ),
      ];
}

type OfArms = Pick<ValveRatio, 'armId' | 'soldAsThen' | 'comesOff'>;

/** Both may be of the arms that were on. */
const isOfSameArms = (one: OfArms, other: OfArms): boolean =>
  one.soldAsThen === other.soldAsThen &&
  one.comesOff === other.comesOff &&
  (one.armId === undefined || other.armId === undefined || one.armId === other.armId);

/**
 * Ratios of the sheet as the calculation of a change takes them: of every valve that was read. Each says that it is from
 * the sheet, and no word stands on it before the lash is known.
 */
export function ratiosOfSheet(
  evidence: Evidence,
  { ratios: all, rows, held }: SheetDetail,
  quantities: readonly AssessedQuantity[],
  read: readonly ValveRatio[],
): ValveRatio[] {
  // Read with the lash in, it is no ratio of the arm: nothing is worked out from it.
  const ratios = all.filter((each) => heldOf(held, each, each.spring).length === 0);
  return ratios.flatMap((ratio): ValveRatio[] => {
    const { value, low, high, spring, lobeLift, cylinder, valve, quantityId } = ratio;
    if (value === undefined || low === undefined || high === undefined || lobeLift === undefined) return [];
    if (spring === 'not-said') return [];
    const row = rows.find((each) => placeOf(each) === placeOf(ratio));
    const arms = defined({
      armId: isOfSetBefore(ratio) ? undefined : row?.armId,
      soldAsThen: ratio.soldAsThen,
      comesOff: ratio.comesOff,
    });
    // What a set-up read of these arms counts; what the sheet has beside it is kept where it is more than that can be.
    const ofSame = read.filter((other) => placeOf(other) === placeOf(ratio) && isOfSameArms(other, arms));
    if (ofSame.some((other) => value <= other.high)) return [];
    const quantity = quantities.find(({ id }) => id === quantityId);
    return [
      {
        cylinder,
        valve,
        setUpId: quantityId,
        ...arms,
        value,
        low,
        high,
        spring,
        basis: 'measured',
        // Left in, the lift as it was read is the net lift already.
        lashIn: ratio.lash === 'set' ? 'left-in' : 'none',
        lobeLift,
        lacks: [...ratio.lacks, ...lashLack(evidence, ratio)],
        restsOn: quantity?.restsOn ?? [],
        ofSheet: true,
      },
    ];
  });
}
