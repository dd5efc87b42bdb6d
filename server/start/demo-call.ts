import demo from '../../seeds/demo.json' with { type: 'json' };
import { buildSpec } from '../../shared/schemas/build-spec.ts';
import { newArm, newNote, newReading, openCall, placeArm } from '../../shared/schemas/commands.ts';
import { method } from '../../shared/schemas/method.ts';
import { newPartReading } from '../../shared/schemas/part-reading.ts';
import { newSheetReadings } from '../../shared/schemas/sheet.ts';
import { refuseTurning } from '../assessment/stops/refuse-turning.ts';
import type { Principal } from '../auth/principal.ts';
import type { Registered } from '../compute/registry.ts';
import type { Tx } from '../database/database.ts';
import { addArm } from '../records/arms/arms.ts';
import { placeArmOnValve } from '../records/arms/placements.ts';
import { reviseBuild } from '../records/builds/revisions.ts';
import { recordTriage } from '../records/calls/hold.ts';
import { startCall } from '../records/calls/open-call.ts';
import { keepNote } from '../records/notes/notes.ts';
import { keepPartReading } from '../records/part-readings/part-readings.ts';
import { newPhotograph } from '../records/photographs/new-photograph.ts';
import { keepPhotograph } from '../records/photographs/photographs.ts';
import type { CleanImage } from '../records/photographs/re-encode.ts';
import { keepReading } from '../records/readings/readings.ts';
import { startSetUp } from '../records/set-ups/set-ups.ts';
import { keepSheetReadings } from '../records/sheet/sheet-readings.ts';
import { keepWorking, workOut } from '../records/workings/workings.ts';

const DAY = 86_400_000;

/** What the demo call is made with, beside its invented data. */
interface DemoTools {
  readonly computations: ReadonlyMap<string, Registered>;
  readonly photograph: CleanImage;
  readonly now: Date;
}

const found = (ids: ReadonlyMap<string, string>, name: string): string => {
  const id = ids.get(name);
  if (id === undefined) throw new Error(`the demo has no ${name}`);
  return id;
};

async function seedArms(tx: Tx, desk: Principal, buildId: string): Promise<ReadonlyMap<string, string>> {
  const ids = new Map<string, string>();
  for (const arm of demo.arms) ids.set(arm.name, (await addArm(tx, desk, buildId, newArm.parse(arm))).id);
  for (const { arm, ...place } of demo.placements)
    await placeArmOnValve(tx, desk, buildId, placeArm.parse({ ...place, armId: found(ids, arm) }));
  return ids;
}

async function seedPasses(tx: Tx, desk: Principal, buildId: string, armId: string): Promise<void> {
  const how = { cylinder: 1, valve: 'intake', armId, method: method.parse(demo.method) } as const;
  const setUp = await startSetUp(tx, desk, buildId, how, refuseTurning);
  for (const reading of demo.readings)
    await keepReading(tx, desk, buildId, setUp.id, newReading.parse(reading), refuseTurning);
}

/** Lobe and valve lift of every intake, then the gaps and lashes that were read. */
async function seedSheet(tx: Tx, desk: Principal, buildId: string): Promise<void> {
  const { intake, ...how } = demo.sheet;
  const lifts = intake.flatMap(([cylinder, lobe, lift]) => [
    { cylinder, valve: 'intake', kind: 'lobe-lift', reading: `${lobe} in` },
    { cylinder, valve: 'intake', kind: 'valve-lift', reading: `${lift} in` },
  ]);
  await keepSheetReadings(
    tx,
    desk,
    buildId,
    newSheetReadings.parse({ ...how, readings: lifts }),
    refuseTurning,
  );
  await keepSheetReadings(tx, desk, buildId, newSheetReadings.parse(demo.gaps), refuseTurning);
}

async function seedGapsTaken(tx: Tx, desk: Principal, buildId: string): Promise<void> {
  const { pivotToTip, ...clearances } = demo.clearances;
  const spec = { ...demo.spec, rockers: { ...demo.spec.rockers, pivotToTip }, clearances };
  const reason = 'gaps taken on the engine';
  await reviseBuild(tx, desk, buildId, { spec: buildSpec.parse(spec), reason }, undefined);
}

/** The invented call with something of every kind that a call can hold, so that its report is a full one. */
export async function seedCall(tx: Tx, desk: Principal, tools: DemoTools): Promise<string> {
  const { id, buildId } = await startCall(tx, desk, openCall.parse(demo.call));
  await recordTriage(tx, desk, id, { engineState: 'apart', contact: 'none' });
  const spec = buildSpec.parse(demo.spec);
  await reviseBuild(tx, desk, buildId, { spec, reason: 'as the caller read it out' }, undefined);
  const arms = await seedArms(tx, desk, buildId);
  await seedPasses(tx, desk, buildId, found(arms, 'arm A'));
  for (const reading of demo.partReadings)
    await keepPartReading(tx, desk, buildId, newPartReading.parse(reading));
  await seedGapsTaken(tx, desk, buildId);
  await seedSheet(tx, desk, buildId);
  const computation = tools.computations.get(demo.working.computation);
  if (computation !== undefined)
    await keepWorking(
      tx,
      desk,
      buildId,
      await workOut(computation, demo.working.inputs, (inputs) => computation.run(inputs, 'inch', 'engine')),
      refuseTurning,
    );
  for (const { days, ...note } of demo.notes) {
    const due =
      days === undefined
        ? {}
        : { due: new Date(tools.now.getTime() + days * DAY).toISOString().slice(0, 10) };
    await keepNote(tx, desk, id, newNote.parse({ ...note, ...due }));
  }
  const { arm, ...photograph } = demo.photograph;
  const about = newPhotograph.parse({ ...photograph, armId: found(arms, arm) });
  await keepPhotograph(tx, desk, buildId, about, tools.photograph);
  return id;
}
