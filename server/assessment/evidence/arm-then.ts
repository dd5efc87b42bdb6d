import { defined } from '../../../shared/defined.ts';
import { storedWord, VALVES } from '../../../shared/schemas/words.ts';
import { eventsOf } from '../../events/read-events.ts';
import type { SatThen, SetUpEvidence, SheetEvidence } from '../../mechanics/assessment/evidence.ts';
import { armThen, nowOnValves, type Placement } from '../../records/arms/placements.ts';
import { firstEntry } from '../../records/corrections/entries.ts';
import { SET_UP_EVENTS } from '../../records/set-ups/events.ts';
import type { SetUp } from '../../records/set-ups/set-ups.ts';
import { SHEET_EVENTS } from '../../records/sheet/events.ts';
import type { SheetReading } from '../../records/sheet/sheet-table.ts';
import type { BuildRecord } from '../../records/whole-build/build-record.ts';
import { soldAsThen } from './sold-then.ts';

interface ReadOnValve {
  readonly cylinder: number;
  readonly valve: string;
  readonly armId: string | undefined;
}

/** The arm of something that was read on a valve and names none: the first that was placed there later, and said so. */
function armPutOnLater({ placements }: BuildRecord, read: ReadOnValve, line: number) {
  const placedBefore = placements.some(
    ({ cylinder, valve, seq }) => cylinder === read.cylinder && valve === read.valve && seq < line,
  );
  const armId = placedBefore ? undefined : armThen(placements, read, line);
  return defined({ armId, putOnLater: armId });
}

/** The arm that a reading of the sheet or a scan was taken with. */
export const armOfReading = (
  record: BuildRecord,
  reading: ReadOnValve & { readonly arms: 'these' | 'before' },
  line: number,
): Pick<SheetEvidence, 'armId' | 'putOnLater'> =>
  reading.armId !== undefined || reading.arms === 'before'
    ? defined({ armId: reading.armId })
    : armPutOnLater(record, reading, line);

/** What each reading of the sheet was taken with: the arm that sat there, what it was sold as, and the dial where the sheet said one. */
export function takenWith(
  record: BuildRecord,
): (reading: SheetReading) => Pick<SheetEvidence, 'armId' | 'putOnLater' | 'perTurn' | 'soldAsThen'> {
  // What was read then was read with the arm and the dial of then, whenever it was put right.
  const firstOf = firstEntry(record.sheetReadings);
  const sold = soldAsThen(record);
  const dials = new Map(
    eventsOf(record.events, SHEET_EVENTS['sheet-readings-kept']).map(({ seq, data }) => [seq, data.perTurn]),
  );
  return (reading) => {
    const { seq } = firstOf(reading);
    return {
      ...armOfReading(record, reading, seq),
      ...defined({ perTurn: dials.get(seq) }),
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
export function armOfSetUp(record: BuildRecord, setUp: SetUp): Pick<SetUpEvidence, 'armId' | 'putOnLater'> {
  if (setUp.armId !== undefined) return { armId: setUp.armId };
  const line = startedAt(record, setUp);
  if (line === undefined) return {};
  const sat = armThen(record.placements, setUp, line);
  const later = armPutOnLater(record, setUp, line);
  return later.armId === undefined ? defined({ armId: sat }) : later;
}
