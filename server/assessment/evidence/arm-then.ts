import { eventsOf } from '../../events/read-events.ts';
import { armThen } from '../../records/arms/placements.ts';
import { SET_UP_EVENTS } from '../../records/set-ups/events.ts';
import type { SetUp } from '../../records/set-ups/set-ups.ts';
import type { SheetReading } from '../../records/sheet/sheet-table.ts';
import type { BuildRecord } from '../../records/whole-build/build-record.ts';

/** The first entry of a chain of corrections: what was read then was read with the arm of then. */
function firstOf({ sheetReadings }: Pick<BuildRecord, 'sheetReadings'>, reading: SheetReading): SheetReading {
  const before = sheetReadings.find(({ id }) => id === reading.replaces);
  return before === undefined ? reading : firstOf({ sheetReadings }, before);
}

/** The arm a reading of the sheet was taken with. One that was entered before its arm was placed names none itself. */
export function armOfReading(record: BuildRecord, reading: SheetReading): string | undefined {
  if (reading.armId !== undefined || reading.arms === 'before') return reading.armId;
  const { seq } = firstOf(record, reading);
  const placedBefore = record.placements.some(
    (each) => each.cylinder === reading.cylinder && each.valve === reading.valve && each.seq < seq,
  );
  return placedBefore ? undefined : armThen(record.placements, reading, seq);
}

/** The arm of a set-up: as it was named there, else the one that sat on its valve when it was started. */
export function armOfSetUp({ events, placements }: BuildRecord, setUp: SetUp): string | undefined {
  if (setUp.armId !== undefined) return setUp.armId;
  const started = eventsOf(events, SET_UP_EVENTS['set-up-started']).find(
    ({ data }) => data.setUpId === setUp.id,
  );
  return started === undefined ? undefined : armThen(placements, setUp, started.seq);
}
