import { withOtherArms } from './change/arms-of-gaps.ts';
import { changePart } from './change/change.ts';
import { withPlannedOn } from './change/planned-on.ts';
import { withSoldThen } from './change/sold-then.ts';
import type { Evidence } from './evidence.ts';
import { forChange } from './gear/measured-alone.ts';
import { ratioKnown, ratioRead } from './ratio/ratio.ts';
import { ratiosWithheld, valveRatios } from './ratio/told/valve-ratios.ts';
import { withScans } from './scans/as-gap.ts';
import { heldRatios } from './sheet/rows/held.ts';
import { sheetPart } from './sheet/sheet.ts';
import { ratiosOfSheet } from './sheet/valve-ratios.ts';

type LiftsRead = ReturnType<typeof liftsRead>;

/** What lifts tell, of set-ups and of the sheet, each held against the other; and the ratios to calculate with. */
export function liftsRead(evidence: Evidence) {
  const gapped = withOtherArms(withScans(evidence));
  // A ratio is told of the arm that it was read of, whatever is on now.
  const ofThen = withPlannedOn(withSoldThen(evidence));
  const setUps = ratioKnown(ofThen);
  const sheet = sheetPart(withSoldThen(gapped), setUps.known);
  const read = ratioRead(ofThen, { ...setUps, known: sheet.known }, sheet.detail.swaps);
  const ofSetUps = valveRatios(read.explained);
  const ratios =
    evidence.engine.gear === 'bucket'
      ? []
      : [...ofSetUps, ...ratiosOfSheet(evidence, sheet.detail, sheet.quantities, ofSetUps)];
  return { gapped, ofThen, sheet, read, ratios };
}

/** What a ratio does: worked out from those that were read, and without a pushrod from what was measured alone. */
export function changeOf(evidence: Evidence, { gapped, ofThen, sheet, read, ratios }: LiftsRead) {
  if (forChange(evidence) !== evidence) return changePart(forChange(gapped), []);
  return changePart(gapped, ratios, [
    ...ratiosWithheld(ofThen, read.explained),
    ...heldRatios(evidence, sheet.detail),
  ]);
}
