import { inSpoken } from '../../shared/quantities/authored.ts';
import { speaking } from '../../shared/quantities/spoken-units.ts';
import type { UnitSystem } from '../../shared/quantities/units.ts';
import { siOf } from '../../shared/schemas/entered.ts';
import { goalOf } from '../../shared/schemas/goals.ts';
import { CONTACT, ENGINE_STATES, keysOf, storedWord, VALVES } from '../../shared/schemas/words.ts';
import { dataOf, eventsOf } from '../events/read-events.ts';
import type { Evidence } from '../mechanics/assessment/evidence.ts';
import { nowOnValves, type Placement } from '../records/arms/placements.ts';
import type { Call } from '../records/calls/calls.ts';
import { TRIAGE_EVENTS } from '../records/calls/events.ts';
import { firstEntry, stillStanding } from '../records/corrections/entries.ts';
import type { Limit } from '../records/limits/known-limits.ts';
import { standingSetUps } from '../records/set-ups/set-ups.ts';
import type { BuildRecord } from '../records/whole-build/build-record.ts';
import { armOfReading, armOfSetUp, satThen, soldInSetUp, takenWith } from './evidence/arm-then.ts';
import { catalogueEvidence } from './evidence/families.ts';
import { familyNamed } from './evidence/family-named.ts';
import {
  answerEvidence,
  armEvidence,
  handPartEvidence,
  noteEvidence,
  partEvidence,
  workingEvidence,
} from './evidence/other-entries.ts';
import { passEvidence, setUpEvidence, statementEvidence } from './evidence/passes.ts';
import { scanEvidence } from './evidence/scans.ts';
import { soldAsThen } from './evidence/sold-then.ts';
import { specEvidence } from './evidence/spec.ts';
import { asNamedNow } from './evidence/stops-lifted.ts';
import { lashEvidence, markEvidence, sheetEvidence } from './evidence/valve-entries.ts';

const pick = <const Word extends string>(words: readonly Word[], text: string, other: Word): Word =>
  words.find((word) => word === text) ?? other;

/** The hold of this call, or of another call about the same engine. */
function holdOf({ id }: Call, { told, events }: BuildRecord) {
  const held = told.filter((each) => each.held);
  const own = held.find((each) => each.id === id) ?? held[0];
  if (own === undefined) return {};
  const set = events.findLast((event) => dataOf(event, TRIAGE_EVENTS['hold-set'])?.callId === own.id);
  return {
    hold: {
      reason: own.holdReason,
      ...(set === undefined ? {} : { line: set.seq, since: set.at.toISOString() }),
    },
  };
}

const CONTACT_STOP = 'stop:contact';

/**
 * Whether contact that was told on any call still stands: what was lifted before it was told again on that call is not
 * lifted for it.
 */
function contactStands({ told, events }: BuildRecord): boolean {
  const lifted =
    eventsOf(events, TRIAGE_EVENTS['hold-lifted']).findLast(({ data }) =>
      data.stops.some(({ stopId }) => stopId === CONTACT_STOP),
    )?.seq ?? 0;
  const last = (callId: string) =>
    eventsOf(events, TRIAGE_EVENTS.triage).findLast(({ data }) => data.callId === callId)?.seq ?? 0;
  return told.some(({ id, contact }) => contact === 'something' && (lifted === 0 || last(id) > lifted));
}

/** Contact that stands on any call, else what was told on this one; with the stops that were lifted. */
function contactOf({ contact }: Call, record: BuildRecord) {
  const stands = contactStands(record);
  const lifted = eventsOf(record.events, TRIAGE_EVENTS['hold-lifted']);
  return {
    contact: stands ? ('something' as const) : pick(keysOf(CONTACT), contact, 'not-asked'),
    stopsLifted: lifted.flatMap(({ data }) =>
      data.stops.filter(({ stopId }) => stopId !== CONTACT_STOP || !stands).map(asNamedNow),
    ),
  };
}

/** What a part is ranked against; a build of which no part was read has none of it. */
const familiesOf = ({ catalogue = [] }: BuildRecord) =>
  catalogue.length === 0 ? {} : { families: catalogueEvidence(catalogue).families };

/** Where a limit is from; words of the shop stay as they were written. */
const sourceSaid = ({ source, revision }: Limit, units: UnitSystem): string =>
  revision === 0 ? speaking(units, () => inSpoken(source)) : source;

const seatOf = ({ cylinder, valve, armId }: Placement) => ({
  cylinder,
  valve: storedWord(VALVES, valve),
  armId,
});

/** What is known of a build, in SI, as the assessment takes it: out of the record as it is now, for one of its calls. */
export function evidenceOf(record: BuildRecord, call: Call): Evidence {
  const firstScan = firstEntry(record.gapScans);
  const firstMark = firstEntry(record.tipMarks);
  const firstReading = firstEntry(record.sheetReadings);
  const firstPass = firstEntry(record.readings);
  const spec = specEvidence(record.build.spec);
  const taken = takenWith(record);
  const sold = soldAsThen(record);
  const soldThen = soldInSetUp(record);
  const setUps = standingSetUps(record.setUps);
  const struckOut = new Set(record.setUps.filter(({ struck }) => struck).map(({ id }) => id));
  return {
    call: {
      goal: goalOf(call.goal),
      ...(record.build.units === 'metric' ? { units: record.build.units } : {}),
      engineState: pick(keysOf(ENGINE_STATES), call.engineState, 'not-asked'),
      closed: call.closedAt !== undefined,
      ...holdOf(call, record),
      ...contactOf(call, record),
    },
    ...spec,
    rockers: { ...spec.rockers, ...familyNamed(record.build.spec, record) },
    arms: record.arms.map(armEvidence),
    seats: nowOnValves(record.placements).map(seatOf),
    ...(record.placements.length === 0 ? {} : { sat: record.placements.map(seatOf) }),
    setUps: setUps.map((setUp) => ({
      ...setUpEvidence(setUp, armOfSetUp(record, setUp), satThen(record, setUp)),
      ...soldThen(setUp),
    })),
    statements: setUps.flatMap(({ statements }) => statements.map(statementEvidence)),
    passes: record.readings
      .filter(({ setUpId }) => !struckOut.has(setUpId))
      .map((pass) => passEvidence(pass, firstPass(pass).seq)),
    sheet: record.sheetReadings.map((reading) =>
      sheetEvidence(reading, taken(reading), firstReading(reading).seq),
    ),
    scans: record.gapScans.map((scan) => {
      const { seq } = firstScan(scan);
      return { ...scanEvidence(scan, seq), ...armOfReading(record, scan, seq), ...sold(seq) };
    }),
    lash: record.lashLines.filter(({ reading }) => reading.arms === 'these').map(lashEvidence),
    tipMarks: record.tipMarks.map((mark) => markEvidence(mark, firstMark(mark).seq)),
    part: record.partReadings.map(partEvidence),
    handParts: record.handParts.map(handPartEvidence),
    ...familiesOf(record),
    answers: record.answers.map(answerEvidence),
    workings: stillStanding(record.workings).map(workingEvidence),
    notes: record.notes.map(noteEvidence),
    catalogueRatios: record.catalogueRatios,
    limits: Object.fromEntries(
      [...record.limits].map(([name, limit]) => [
        name,
        { value: siOf(limit.value), source: sourceSaid(limit, record.build.units) },
      ]),
    ),
  };
}
