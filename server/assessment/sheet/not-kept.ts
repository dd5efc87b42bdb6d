import { siIf } from '../../../shared/schemas/entered.ts';
import type { Gauged } from '../../../shared/schemas/gauged.ts';
import type { SheetHow, SheetKind } from '../../../shared/schemas/sheet.ts';
import type { AssessedQuestion } from '../../mechanics/assessment/assessment.ts';
import type { ValvePlace } from '../../mechanics/assessment/evidence.ts';
import { noSuchValves } from '../../mechanics/assessment/gear/no-such-valve.ts';
import { lashPart } from '../../mechanics/assessment/lash/lash.ts';
import { sheetPart } from '../../mechanics/assessment/sheet/sheet.ts';
import { nowOnValves } from '../../records/arms/placements.ts';
import type { Call } from '../../records/calls/calls.ts';
import { toLashLines } from '../../records/lash-log/lash-log.ts';
import { armRead, howOf } from '../../records/sheet/sheet-readings.ts';
import type { SheetReading } from '../../records/sheet/sheet-table.ts';
import type { BuildRecord } from '../../records/whole-build/build-record.ts';
import { asIfKept } from '../as-if-kept.ts';
import { evidenceOf } from '../evidence.ts';

/** A reading that was sent and is not on record, under a name of its own. */
export interface NotKept extends ValvePlace {
  readonly id: string;
  readonly kind: SheetKind;
  readonly reading: Gauged;
  readonly armId?: string | undefined;
}

/** The readings as they would stand on the record. */
function asKept(record: BuildRecord, how: SheetHow, readings: readonly NotKept[]): SheetReading[] {
  const now = nowOnValves(record.placements);
  return readings.map(({ id, cylinder, valve, kind, reading, armId }) => ({
    id,
    ...asIfKept(record),
    cylinder,
    valve,
    kind,
    reading,
    ...howOf(how, kind),
    arms: how.arms,
    armId: armRead(
      how.arms,
      armId,
      now.find((seat) => seat.cylinder === cylinder && seat.valve === valve)?.armId,
    ),
  }));
}

/** What readings would be asked if they were kept: the very questions, before they are. */
export function questionsOfNotKept(
  record: BuildRecord,
  call: Call,
  how: SheetHow,
  readings: readonly NotKept[],
): readonly AssessedQuestion[] {
  const own = new Set(readings.map(({ id }) => id));
  const added = asKept(record, how, readings);
  const sheetReadings = [...record.sheetReadings, ...added];
  const lashLines = [...record.lashLines, ...toLashLines(added, [])];
  const evidence = evidenceOf({ ...record, sheetReadings, lashLines }, call);
  const perTurn = siIf(how.perTurn);
  const sheet = evidence.sheet.map((each) =>
    perTurn !== undefined && own.has(each.id) ? { ...each, perTurn } : each,
  );
  const asked = [
    ...sheetPart({ ...evidence, sheet }).questions,
    ...lashPart(evidence).questions.filter(({ step }) => step === 'sheet'),
    ...noSuchValves({ ...evidence, sheet }),
  ];
  return asked.filter(({ restsOn }) => restsOn.some((id) => own.has(id)));
}
