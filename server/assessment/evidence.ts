import { defined } from '../../shared/defined.ts';
import { siOf } from '../../shared/schemas/entered.ts';
import { goalOf } from '../../shared/schemas/goals.ts';
import { CONTACT, ENGINE_STATES, keysOf } from '../../shared/schemas/words.ts';
import { eventsOf, isEvent } from '../events/read-events.ts';
import type { Evidence } from '../mechanics/assessment/evidence.ts';
import { nowOnValves } from '../records/arms/placements.ts';
import type { Call } from '../records/calls/calls.ts';
import { TRIAGE_EVENTS } from '../records/calls/events.ts';
import type { BuildRecord } from '../records/whole-build/build-record.ts';
import { armOfSetUp, takenWith } from './evidence/arm-then.ts';
import { familyEvidence } from './evidence/families.ts';
import {
  answerEvidence,
  armEvidence,
  noteEvidence,
  partEvidence,
  workingEvidence,
} from './evidence/other-entries.ts';
import { passEvidence, setUpEvidence } from './evidence/passes.ts';
import { specEvidence } from './evidence/spec.ts';
import { lashEvidence, markEvidence, sheetEvidence } from './evidence/valve-entries.ts';

const pick = <const Word extends string>(words: readonly Word[], text: string, other: Word): Word =>
  words.find((word) => word === text) ?? other;

function holdOf({ held, holdReason }: Call, { events }: BuildRecord) {
  if (!held) return {};
  const set = events.findLast((event) => isEvent(event, TRIAGE_EVENTS['hold-set']));
  return {
    hold: {
      reason: holdReason,
      ...(set === undefined ? {} : { line: set.seq, since: set.at.toISOString() }),
    },
  };
}

/** Stops that were lifted. Contact that was told again after the lifting is not lifted by it. */
function liftedOf({ events }: BuildRecord) {
  const told = events.findLast((event) => isEvent(event, TRIAGE_EVENTS.triage))?.seq ?? 0;
  const lifted = eventsOf(events, TRIAGE_EVENTS['hold-lifted']);
  return lifted.flatMap(({ seq, data }) =>
    data.stops.filter(({ stopId }) => stopId !== 'stop:contact' || seq > told).map(defined),
  );
}

/** What a part is ranked against; a build of which no part was read has none of it. */
const familiesOf = ({ catalogue = [] }: BuildRecord) =>
  catalogue.length === 0 ? {} : { families: catalogue.map(familyEvidence) };

/** What is known of a build, in SI, as the assessment takes it: out of the record as it is now, for one of its calls. */
export function evidenceOf(record: BuildRecord, call: Call): Evidence {
  const taken = takenWith(record);
  return {
    call: {
      goal: goalOf(call.goal),
      contact: pick(keysOf(CONTACT), call.contact, 'not-asked'),
      engineState: pick(keysOf(ENGINE_STATES), call.engineState, 'not-asked'),
      closed: call.closedAt !== undefined,
      ...holdOf(call, record),
      stopsLifted: liftedOf(record),
    },
    ...specEvidence(record.build.spec),
    arms: record.arms.map(armEvidence),
    seats: nowOnValves(record.placements).map(({ cylinder, valve, armId }) => ({
      cylinder,
      valve: valve === 'exhaust' ? 'exhaust' : 'intake',
      armId,
    })),
    setUps: record.setUps.map((setUp) => setUpEvidence(setUp, armOfSetUp(record, setUp))),
    passes: record.readings.map(passEvidence),
    sheet: record.sheetReadings.map((reading) => sheetEvidence(reading, taken(reading))),
    lash: record.lashLines.filter(({ reading }) => reading.arms === 'these').map(lashEvidence),
    tipMarks: record.tipMarks.map(markEvidence),
    part: record.partReadings.map(partEvidence),
    ...familiesOf(record),
    answers: record.answers.map(answerEvidence),
    workings: record.workings.map(workingEvidence),
    notes: record.notes.map(noteEvidence),
    catalogueRatios: record.catalogueRatios,
    limits: Object.fromEntries(
      [...record.limits].map(([name, limit]) => [name, { value: siOf(limit.value), source: limit.source }]),
    ),
  };
}
