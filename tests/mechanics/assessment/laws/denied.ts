import type { Assessment } from '../../../../server/mechanics/assessment/assessment.ts';
import type { ChangeDetail } from '../../../../server/mechanics/assessment/change/detail.ts';
import { isRatio } from '../../../../server/mechanics/assessment/common/stamp-read.ts';
import type { SheetRatioTold } from '../../../../server/mechanics/assessment/sheet/rows/detail.ts';
import { usualDeflection } from '../../../../server/mechanics/kit/allowances.ts';
import { sideOfValve } from '../../../../shared/schemas/words.ts';
import type { Law } from './law.ts';

/** The ratios of the sheet that a detail is told of: of its valve, or of those of its side that have none of their own. */
function readFor({ about }: ChangeDetail, { details }: Assessment): SheetRatioTold[] {
  const own = new Set(
    details.change.flatMap((each) =>
      each.about.of === 'valve' ? [`${each.about.cylinder} ${each.about.valve}`] : [],
    ),
  );
  return details.sheet.ratios.filter(({ cylinder, valve }) => {
    if (about.of === 'valve') return about.cylinder === cylinder && about.valve === valve;
    return about.of === 'side' && sideOfValve(valve) === about.valve && !own.has(`${cylinder} ${valve}`);
  });
}

/** Of the arms that are on, and as they were read: the lift of these is this or more. */
const isOfNow = ({ soldAsThen, comesOff }: SheetRatioTold): boolean =>
  soldAsThen === undefined && comesOff !== true;

/**
 * No gap is clear on a ratio that readings of that valve deny: what was read as more than all that the ratio after may be
 * is calculated with, or the gap has no word.
 */
export const nothingIsClearAgainstAReading: Law = ({ evidence, assessment }) => {
  // Without a pushrod no ratio makes a gap; with a plan what is on says nothing of what is to be fitted.
  if ((evidence.engine.gear ?? 'pushrod') !== 'pushrod') return [];
  return assessment.details.change.flatMap((detail) => {
    const { after, gaps, plan, id } = detail;
    const clear = gaps.filter(({ word, after: gap }) => word === 'clear' && gap?.basis === 'calculated');
    if (plan !== undefined || after === undefined || clear.length === 0) return [];
    // A running-spring ratio is raised by the most that the train may bend.
    const bend =
      after.spring === 'running' ? usualDeflection(evidence.engine.mounting).to / (detail.lobeLift ?? 1) : 0;
    return (
      readFor(detail, assessment)
        .filter(isOfNow)
        // Where it is typed a lift that no rocker makes is asked about; the generated builds come by no field.
        .filter(({ value }) => value !== undefined && isRatio(value) && value > after.high + bend)
        .map(
          ({ quantityId, value }) =>
            `${id}: ${clear.map(({ name }) => name).join()} clear with ${after.said}, ${quantityId} reads ${value}`,
        )
    );
  });
};
