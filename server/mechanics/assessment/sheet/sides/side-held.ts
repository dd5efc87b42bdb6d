import { wasThere } from '../../common/since.ts';
import type { AnswerEvidence, Evidence } from '../../evidence.ts';
import { claimOfRow } from '../rows/claim-of-row.ts';
import type { SheetHeld, SheetRatioDetail } from '../rows/detail.ts';
import type { LiftLot, SheetRow } from '../rows/rows.ts';
import { isInScope, sideAnswers } from './group-answered.ts';

const LACK = 'another reading: these were not read right, as was answered';

/** All that counts of it was there when that was answered. */
const isFromThen = (readings: LiftLot['readings'], answer: AnswerEvidence): boolean =>
  readings.length > 0 && readings.every((each) => wasThere(each, answer));

/**
 * Lifts, and ratios over lobes, of a whole side that was not read right, as was answered: nothing is worked out from them
 * until they are read again. What made it low is in it; of one that reads over nobody knows.
 */
export function heldOfSides(
  evidence: Evidence,
  rows: readonly SheetRow[],
  ratios: readonly SheetRatioDetail[],
): SheetHeld[] {
  const answers = sideAnswers(evidence);
  if (answers.length === 0) return [];
  return rows.flatMap(({ cylinder, valve, lobes, lifts, ...row }) =>
    lifts.flatMap((lot): SheetHeld[] => {
      const { spring, readings } = lot;
      const at = { cylinder, valve, spring };
      const isHeld = answers.some(({ answer, scope }) =>
        isInScope(scope, { ...at, kind: scope.kind })
          ? isFromThen(scope.kind === 'valve-lift' ? readings : lobes, answer)
          : false,
      );
      if (!isHeld) return [];
      const claim = claimOfRow(evidence, { cylinder, valve, lobes, lifts, ...row }, spring)?.ratio;
      const read = ratios.find(
        (each) => each.cylinder === cylinder && each.valve === valve && each.spring === spring,
      )?.value;
      const isUnder = claim !== undefined && read !== undefined && read <= claim;
      return [{ ...at, lack: LACK, ...(isUnder ? {} : { mayBeLess: true }) }];
    }),
  );
}
