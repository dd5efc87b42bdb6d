import { defined } from '../../../shared/defined.ts';
import { storedWord, VALVES } from '../../../shared/schemas/words.ts';
import { eventsOf } from '../../events/read-events.ts';
import type { SatThen, SheetEvidence } from '../../mechanics/assessment/evidence.ts';
import { armThen, nowOnValves, type Placement } from '../../records/arms/placements.ts';
import { firstEntry } from '../../records/corrections/entries.ts';
import { SET_UP_EVENTS } from '../../records/set-ups/events.ts';
import type { SetUp } from '../../records/set-ups/set-ups.ts';
import { SHEET_EVENTS } from '../../records/sheet/events.ts';
import type { SheetReading } from '../../records/sheet/sheet-table.ts';
import type { BuildRecord } from '../../records/whole-build/build-record.ts';
import { soldAsThen } from './sold-then.ts';

/** The arm a reading of the sheet was taken with. One that was entered before its arm was placed names none itself. */
function armOfReading({ placements }: BuildRecord, reading: SheetReading, line: number): string | undefined {
  if (reading.armId !== undefined || reading.arms === 'before') return reading.armId;
  const placedBefore = placements.some(
    (each) => each.cylinder === reading.cylinder && each.valve === reading.valve && each.seq < line,
  );
  return placedBefore ? undefined : armThen(placements, reading, line);
}

/** What each reading of the sheet was taken with: the arm that sat there, what it was sold as, and the dial where the sheet said one. */
export function takenWith(
  record: BuildRecord,
): (reading: SheetReading) => Pick<SheetEvidence, 'armId' | 'perTurn' | 'soldAsThen'> {
  // What was read then was read with the arm and the dial of then, whenever it was put right.
  const firstOf = firstEntry(record.sheetReadings);
  const sold = soldAsThen(record);
  const dials = new Map(
    eventsOf(record.events, SHEET_EVENTS['sheet-readings-kept']).map(({ seq, data }) => [seq, data.perTurn]),
  );
  return (reading) => {
    const { seq } = firstOf(reading);
    return {
      ...defined({ armId: armOfReading(record, reading, seq), perTurn: dials.get(seq) }),
      ...sold(seq),
    };
  };
}

const startedAt = ({ events }: BuildRecord, setUp: SetUp): number | undefined =>
  eventsOf(events, SET_UP_EVENTS['set-up-started']).find(({ data }) => data.setUpId === setUp.id)?.seq;

const placeOf = ({ cylinder, valve }: Placement) => ({ cylinder, valve: storedWord(VALVES, valve) });

/** Where each arm sat when a set-up was started, with every valve that it was ever put on. */
export function satThen(record: BuildRecord, setUp: SetUp): SatThen[] {
  const line = startedAt(record, setUp);
  if (line === undefined) return [];
  const { placements } = record;
  return nowOnValves(placements.filter(({ seq }) => seq < line)).map((placement) => ({
    ...placeOf(placement),
    armId: placement.armId,
    everOn: placements.filter(({ armId }) => armId === placement.armId).map(placeOf),
  }));
}

/** What the rockers were sold as when the first pass of a set-up was read, where that is another ratio now. */
export function soldInSetUp(record: BuildRecord): (setUp: SetUp) => { readonly soldAsThen?: number } {
  const sold = soldAsThen(record);
  return (setUp) => {
    const read = record.readings.filter(({ setUpId }) => setUpId === setUp.id).map(({ seq }) => seq);
    return read.length === 0 ? {} : sold(Math.min(...read));
  };
}

/** The arm of a set-up: as it was named there, else the one that sat on its valve when it was started. */
export function armOfSetUp(record: BuildRecord, setUp: SetUp): string | undefined {
  if (setUp.armId !== undefined) return setUp.armId;
  const line = startedAt(record, setUp);
  return line === undefined ? undefined : armThen(record.placements, setUp, line);
}
