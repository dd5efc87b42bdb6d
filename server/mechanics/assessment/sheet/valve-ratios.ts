import { defined } from '../../../../shared/defined.ts';
import { isHydraulicLifter } from '../../../../shared/lifters.ts';
import { sideOfValve } from '../../../../shared/schemas/words.ts';
import type { AssessedQuantity } from '../assessment.ts';
import type { ValveRatio } from '../change/input.ts';
import { type Lack, toSay } from '../common/lack.ts';
import { placeOf } from '../common/said.ts';
import type { Evidence } from '../evidence.ts';
import type { SheetDetail, SheetRatioDetail, SheetRatioTold } from './detail.ts';
import { isLashOut } from './group-answered.ts';
import { gappedIn, heldOf } from './held.ts';
import { isOfSetBefore, ofNowElseAll } from './rows.ts';

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
          `whether the lash was out when ${placeOf(ratio)} was read for the per-valve sheet`,
        ),
      ];
}

/** Of a side of which no set-up was read the highest on the lightest spring: it leaves the least room. */
function highestOf(ratios: readonly SheetRatioTold[], read: readonly ValveRatio[]): SheetRatioTold[] {
  return (['intake', 'exhaust'] as const).flatMap((side) => {
    if (read.some(({ valve }) => sideOfValve(valve) === side)) return [];
    const own = ratios.filter(({ valve, value }) => sideOfValve(valve) === side && value !== undefined);
    const current = ofNowElseAll(own);
    const light = current.filter(({ spring }) => spring === 'light');
    const used = light.length > 0 ? light : current.filter(({ spring }) => spring === 'running');
    return used.toSorted((a, b) => (b.value ?? 0) - (a.value ?? 0) || a.cylinder - b.cylinder).slice(0, 1);
  });
}

/**
 * Ratios of the sheet as the calculation of a change takes them: of the valves whose gaps were read, and of a side of
 * which no set-up was read the highest. Each says that it is from the sheet, and no word stands on it before the lash
 * is known.
 */
export function ratiosOfSheet(
  evidence: Evidence,
  { ratios: all, rows, held }: SheetDetail,
  quantities: readonly AssessedQuantity[],
  read: readonly ValveRatio[],
): ValveRatio[] {
  // Read with the lash in, it is no ratio of the arm: nothing is worked out from it.
  const ratios = all.filter((each) => heldOf(held, each, each.spring).length === 0);
  const gapped = gappedIn(evidence);
  const highest = highestOf(ratios, read);
  const wanted = ratios.filter((ratio) => gapped.has(placeOf(ratio)) || highest.includes(ratio));
  return wanted.flatMap((ratio): ValveRatio[] => {
    const { value, low, high, spring, lobeLift, cylinder, valve, quantityId } = ratio;
    if (value === undefined || low === undefined || high === undefined || lobeLift === undefined) return [];
    if (spring === 'not-said' || read.some((other) => placeOf(other) === placeOf(ratio))) return [];
    const row = rows.find((each) => placeOf(each) === placeOf(ratio));
    const quantity = quantities.find(({ id }) => id === quantityId);
    return [
      {
        cylinder,
        valve,
        setUpId: quantityId,
        ...defined({
          armId: isOfSetBefore(ratio) ? undefined : row?.armId,
          soldAsThen: ratio.soldAsThen,
          comesOff: ratio.comesOff,
        }),
        value,
        low,
        high,
        spring,
        basis: 'measured',
        lashIn: 'none',
        lobeLift,
        lacks: [...ratio.lacks, ...lashLack(evidence, ratio)],
        restsOn: quantity?.restsOn ?? [],
      },
    ];
  });
}
