import { speaking } from '../../../shared/quantities/spoken-units.ts';
import type { StopReason } from './assessment.ts';
import { withOtherArms } from './change/arms-of-gaps.ts';
import { makingOnce } from './common/once.ts';
import type { Evidence } from './evidence.ts';
import { lashPart } from './lash/lash.ts';
import { marksPart } from './marks/marks.ts';
import { noiseStops } from './noise/stops.ts';
import { prepared } from './prepared.ts';
import { ratioKnown } from './ratio/ratio.ts';
import { withScans } from './scans/as-gap.ts';
import { sheetPart } from './sheet/sheet.ts';
import { stopReasons } from './stop.ts';
import { workingsPart } from './workings/workings.ts';

/**
 * The stops of the assessment alone, without weighing what would explain the readings: asked before each entry of a
 * build that has something to stop it.
 *
 * @param evidence as `assess` takes it
 * @returns what `assess` gives as `stop`
 */
export const stopsOf = (evidence: Evidence): StopReason[] =>
  speaking(evidence.call.units ?? 'inch', () => makingOnce(() => stopsIn(prepared(evidence))));

function stopsIn(evidence: Evidence): StopReason[] {
  return stopReasons(evidence, [
    ...[
      sheetPart(withOtherArms(withScans(evidence)), ratioKnown(evidence).known),
      marksPart(evidence, []),
      lashPart(evidence),
      workingsPart(evidence),
    ].flatMap(({ stop }) => stop),
    ...noiseStops(evidence),
  ]);
}
