import type { PasteGapScan } from '../../../shared/schemas/gap-scan.ts';
import type { AssessedQuestion } from '../../mechanics/assessment/assessment.ts';
import { withOtherArms } from '../../mechanics/assessment/change/arms-of-gaps.ts';
import { withScans } from '../../mechanics/assessment/scans/as-gap.ts';
import type { ScanDetail } from '../../mechanics/assessment/scans/detail.ts';
import { scansPart } from '../../mechanics/assessment/scans/scans.ts';
import type { Call } from '../../records/calls/calls.ts';
import { type GapScan, scanReadAs } from '../../records/gap-scans/gap-scan-table.ts';
import type { ScanRows } from '../../records/gap-scans/scan-rows.ts';
import type { BuildRecord } from '../../records/whole-build/build-record.ts';
import { asIfKept } from '../as-if-kept.ts';
import { evidenceOf } from '../evidence.ts';

const PASTED = 'pasted';

/** The pasted rows as a scan that would stand on the record. */
function asKept(record: BuildRecord, input: PasteGapScan, { readings }: ScanRows): GapScan {
  const { text: _, unit: __, keep: ___, lashSetting, ...scan } = input;
  return {
    id: PASTED,
    ...asIfKept(record),
    ...scan,
    lashSetting,
    readings,
    readAs: scanReadAs(readings),
    armId: undefined,
  };
}

export interface LookedAt {
  readonly detail: ScanDetail | undefined;
  readonly questions: readonly AssessedQuestion[];
}

/** What would be said of pasted rows if they were kept: the very sentence and questions, before they are. */
export function lookedScan(record: BuildRecord, call: Call, input: PasteGapScan, rows: ScanRows): LookedAt {
  if (rows.readings.length === 0 || rows.faults.length > 0) return { detail: undefined, questions: [] };
  const evidence = evidenceOf({ ...record, gapScans: [asKept(record, input, rows)] }, call);
  const said = scansPart(withOtherArms(withScans(evidence)));
  return { detail: said.detail.scans[0], questions: said.questions };
}
