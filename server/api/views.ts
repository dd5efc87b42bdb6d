import { z } from 'zod';
import { UNITS } from '../../shared/quantities/units.ts';
import { buildSpec } from '../../shared/schemas/build-spec.ts';
import { method } from '../../shared/schemas/method.ts';
import { keysOf } from '../../shared/schemas/words.ts';
import type { RecordedEvent } from '../events/build-events.ts';
import type { Arm } from '../records/arms/arms.ts';
import type { Placement } from '../records/arms/placements.ts';
import type { Build } from '../records/builds/builds.ts';
import type { Revision } from '../records/builds/revisions.ts';
import type { Call } from '../records/calls/calls.ts';
import type { ListedCall } from '../records/calls/list-calls.ts';
import { entryShape, showEntry } from '../records/corrections/view.ts';
import type { Note } from '../records/notes/notes.ts';
import type { Reading } from '../records/readings/readings.ts';
import type { SetUp } from '../records/set-ups/set-ups.ts';

/** The shapes of stored things as JSON answers have them, and how each is made from its domain object. */
const moment = z.iso.datetime();
const unitNames = z.enum(keysOf(Object.fromEntries(Object.keys(UNITS).map((unit) => [unit, unit]))));
export const quantityView = z.object({ value: z.number(), unit: unitNames });
const enteredView = quantityView.extend({ typed: z.string(), readAs: z.string() });

export const callView = z
  .object({
    id: z.uuid(),
    number: z.int(),
    buildId: z.uuid(),
    callerName: z.string(),
    callerRole: z.string(),
    callBack: z.string(),
    goal: z.string(),
    engineState: z.string(),
    contact: z.string(),
    held: z.boolean(),
    holdReason: z.string(),
    openedAt: moment,
    closedAt: moment.optional(),
  })
  .meta({ id: 'Call' });

export function showCall(call: Call): z.output<typeof callView> {
  const { openedAt, closedAt, ...rest } = call;
  return {
    ...rest,
    openedAt: openedAt.toISOString(),
    ...(closedAt === undefined ? {} : { closedAt: closedAt.toISOString() }),
  };
}

export const listedCallView = callView.extend({ buildLabel: z.string() }).meta({ id: 'ListedCall' });
export function showListedCall(call: ListedCall): z.output<typeof listedCallView> {
  return { ...showCall(call), buildLabel: call.buildLabel };
}

export const buildView = z
  .object({
    id: z.uuid(),
    label: z.string(),
    revision: z.int(),
    version: z.int(),
    spec: buildSpec,
    createdAt: moment,
  })
  .meta({ id: 'Build' });
export function showBuild(build: Build) {
  return { ...build, createdAt: build.createdAt.toISOString() };
}

export const revisionView = z
  .object({ revision: z.int(), spec: buildSpec, reason: z.string(), by: z.string(), at: moment })
  .meta({ id: 'Revision' });
export function showRevision(revision: Revision) {
  return { ...revision, at: revision.at.toISOString() };
}

export const armView = z
  .object({
    id: z.uuid(),
    name: z.string(),
    family: z.string(),
    ratioStamp: z.string(),
    otherNumber: z.string(),
    boxLabel: z.string(),
    by: z.string(),
    at: moment,
  })
  .meta({ id: 'Arm' });
export function showArm(arm: Arm) {
  return { ...arm, at: arm.at.toISOString() };
}

export const placementView = z
  .object({
    id: z.uuid(),
    armId: z.uuid(),
    cylinder: z.int(),
    valve: z.string(),
    reason: z.string(),
    seq: z.int(),
    by: z.string(),
    at: moment,
  })
  .meta({ id: 'Placement' });
export function showPlacement(placement: Placement) {
  return { ...placement, at: placement.at.toISOString() };
}

export const setUpView = z
  .object({
    id: z.uuid(),
    buildId: z.uuid(),
    number: z.int(),
    revision: z.int(),
    cylinder: z.int(),
    valve: z.enum(['intake', 'exhaust']),
    armId: z.uuid().optional(),
    method,
    by: z.string(),
    at: moment,
  })
  .meta({ id: 'SetUp' });
export function showSetUp(setUp: SetUp) {
  const { armId, at, ...rest } = setUp;
  return { ...rest, ...(armId === undefined ? {} : { armId }), at: at.toISOString() };
}

export const readingView = z
  .object({
    ...entryShape,
    setUpId: z.uuid(),
    kind: z.string(),
    pass: z.int(),
    peak: enteredView,
    zeroReturn: quantityView.optional(),
    atLobeLift: enteredView.optional(),
    counted: z.boolean(),
  })
  .meta({ id: 'Reading' });
export function showReading(reading: Reading): z.output<typeof readingView> {
  const { zeroReturn, atLobeLift, ...rest } = reading;
  return {
    ...showEntry(rest),
    ...(atLobeLift === undefined ? {} : { atLobeLift: { ...atLobeLift } }),
    ...(zeroReturn === undefined ? {} : { zeroReturn: { ...zeroReturn } }),
  };
}

export const eventView = z
  .object({
    seq: z.int(),
    kind: z.string(),
    data: z.record(z.string(), z.unknown()),
    by: z.string(),
    byKind: z.string(),
    at: moment,
  })
  .meta({ id: 'Event' });
export function showEvent(event: RecordedEvent) {
  return { ...event, at: event.at.toISOString() };
}

export const noteView = z
  .object({
    id: z.uuid(),
    callId: z.uuid(),
    kind: z.string(),
    body: z.string(),
    restsOn: z.string(),
    owner: z.string(),
    due: z.string().optional(),
    doneAt: moment.optional(),
    seq: z.int(),
    by: z.string(),
    at: moment,
  })
  .meta({ id: 'Note' });
export function showNote(note: Note): z.output<typeof noteView> {
  const { due, doneAt, at, ...rest } = note;
  return {
    ...rest,
    ...(due === undefined ? {} : { due }),
    ...(doneAt === undefined ? {} : { doneAt: doneAt.toISOString() }),
    at: at.toISOString(),
  };
}
