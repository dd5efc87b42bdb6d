import type { z } from 'zod';
import type { BuildSpec, buildSpec } from '../../shared/schemas/build-spec.ts';
import type { newArm, placeArm } from '../../shared/schemas/commands.ts';
import { author, type Caller, requireBuild } from '../access/caller.ts';
import type { Tx } from '../database/database.ts';
import { Failure, notFound } from '../problems/failure.ts';
import { listedOf } from '../record/readable.ts';
import { onBuild } from '../record/record.ts';

export interface Build {
  readonly id: string;
  readonly label: string;
  readonly revision: number;
  /** Counts every change to the build or anything in it. */
  readonly version: number;
  readonly spec: BuildSpec;
  readonly createdAt: Date;
}

export interface Arm {
  readonly id: string;
  readonly name: string;
  readonly family: string;
  readonly ratioStamp: string;
  readonly otherNumber: string;
  readonly boxLabel: string;
  readonly by: string;
  readonly at: Date;
}

export interface Placement {
  readonly id: string;
  readonly armId: string;
  readonly cylinder: number;
  readonly valve: string;
  readonly reason: string;
  readonly seq: number;
  readonly by: string;
  readonly at: Date;
}

export async function getBuild(tx: Tx, caller: Caller, buildId: string): Promise<Build> {
  requireBuild(caller, buildId, 'read');
  const row = await tx
    .selectFrom('build')
    .leftJoin('build_revision', (join) =>
      join
        .onRef('build_revision.shop_id', '=', 'build.shop_id')
        .onRef('build_revision.build_id', '=', 'build.id')
        .onRef('build_revision.revision', '=', 'build.revision'),
    )
    .select([
      'build.id',
      'build.label',
      'build.revision',
      'build.last_seq',
      'build.created_at',
      'build_revision.spec',
    ])
    .where('build.shop_id', '=', caller.shopId)
    .where('build.id', '=', buildId)
    .executeTakeFirst();
  if (row === undefined) throw notFound('build');
  return {
    id: row.id,
    label: row.label,
    revision: row.revision,
    version: row.last_seq,
    spec: row.spec ?? {},
    createdAt: row.created_at,
  };
}

export interface Revision {
  readonly revision: number;
  readonly spec: BuildSpec;
  readonly reason: string;
  readonly by: string;
  readonly at: Date;
}

export async function listRevisions(tx: Tx, caller: Caller, buildId: string): Promise<Revision[]> {
  requireBuild(caller, buildId, 'read');
  const rows = await tx
    .selectFrom('build_revision')
    .selectAll()
    .where('shop_id', '=', caller.shopId)
    .where('build_id', '=', buildId)
    .orderBy('revision')
    .execute();
  return (await listedOf(tx, caller, buildId, rows)).map((row) => ({
    revision: row.revision,
    spec: row.spec,
    reason: row.reason,
    by: row.by_name,
    at: row.created_at,
  }));
}

/** The specification as it was at one revision; old readings mean what they meant then. */
export async function specAt(tx: Tx, shopId: string, buildId: string, revision: number): Promise<BuildSpec> {
  const row = await tx
    .selectFrom('build_revision')
    .select('spec')
    .where('shop_id', '=', shopId)
    .where('build_id', '=', buildId)
    .where('revision', '=', revision)
    .executeTakeFirst();
  return row?.spec ?? {};
}

/**
 * Keeps a new revision of the build. `expected` is the version the writer read; a build that has since got
 * another revision is refused, both sides shown.
 */
export async function reviseBuild(
  tx: Tx,
  caller: Caller,
  buildId: string,
  input: { readonly spec: z.output<typeof buildSpec>; readonly reason: string },
  expectedRevision: number | undefined,
): Promise<Build> {
  return onBuild(tx, caller, buildId, async ({ build, emit }) => {
    if (expectedRevision !== undefined && expectedRevision !== build.revision) {
      throw new Failure(
        'version-stale',
        `you read revision ${expectedRevision}; it is now at revision ${build.revision}`,
        { headers: { etag: `"${build.revision}"` } },
      );
    }
    const revision = build.revision + 1;
    await tx
      .insertInto('build_revision')
      .values({
        shop_id: caller.shopId,
        build_id: buildId,
        revision,
        spec: JSON.stringify(input.spec),
        reason: input.reason,
        ...author(caller),
      })
      .execute();
    await tx
      .updateTable('build')
      .set({ revision })
      .where('shop_id', '=', caller.shopId)
      .where('id', '=', buildId)
      .execute();
    const version = await emit('build-revised', { revision, reason: input.reason });
    return { id: buildId, label: build.label, revision, version, spec: input.spec, createdAt: new Date() };
  });
}

export async function addArm(
  tx: Tx,
  caller: Caller,
  buildId: string,
  input: z.output<typeof newArm>,
): Promise<Arm> {
  return onBuild(tx, caller, buildId, async ({ emit }) => {
    const row = await tx
      .insertInto('arm')
      .values({
        shop_id: caller.shopId,
        build_id: buildId,
        name: input.name,
        family: input.family,
        ratio_stamp: input.ratioStamp,
        other_number: input.otherNumber,
        box_label: input.boxLabel,
        ...author(caller),
      })
      .onConflict((conflict) => conflict.columns(['shop_id', 'build_id', 'name']).doNothing())
      .returning(['id', 'created_at'])
      .executeTakeFirst();
    if (row === undefined)
      throw new Failure('conflict', `this build already has an arm called “${input.name}”`);
    await emit('arm-added', { armId: row.id, ...input });
    return { id: row.id, ...input, by: caller.name, at: row.created_at };
  });
}

export async function placeArmOnValve(
  tx: Tx,
  caller: Caller,
  buildId: string,
  input: z.output<typeof placeArm>,
): Promise<Placement> {
  return onBuild(tx, caller, buildId, async ({ emit }) => {
    const arm = await tx
      .selectFrom('arm')
      .select('name')
      .where('shop_id', '=', caller.shopId)
      .where('build_id', '=', buildId)
      .where('id', '=', input.armId)
      .executeTakeFirst();
    if (arm === undefined) throw notFound('arm');
    const seq = await emit('arm-placed', { arm: arm.name, ...input });
    const row = await tx
      .insertInto('arm_placement')
      .values({
        shop_id: caller.shopId,
        build_id: buildId,
        arm_id: input.armId,
        cylinder: input.cylinder,
        valve: input.valve,
        reason: input.reason,
        seq,
        ...author(caller),
      })
      .returning(['id', 'created_at'])
      .executeTakeFirstOrThrow();
    return { id: row.id, ...input, seq, by: caller.name, at: row.created_at };
  });
}

export async function listArms(tx: Tx, caller: Caller, buildId: string): Promise<Arm[]> {
  requireBuild(caller, buildId, 'read');
  const rows = await tx
    .selectFrom('arm')
    .selectAll()
    .where('shop_id', '=', caller.shopId)
    .where('build_id', '=', buildId)
    .orderBy('created_at')
    .orderBy('id')
    .execute();
  return (await listedOf(tx, caller, buildId, rows)).map((row) => ({
    id: row.id,
    name: row.name,
    family: row.family,
    ratioStamp: row.ratio_stamp,
    otherNumber: row.other_number,
    boxLabel: row.box_label,
    by: row.by_name,
    at: row.created_at,
  }));
}

/** Every placement in order; the last one of a valve is what sits there now, unless that arm has moved on. */
export async function listPlacements(tx: Tx, caller: Caller, buildId: string): Promise<Placement[]> {
  requireBuild(caller, buildId, 'read');
  const rows = await tx
    .selectFrom('arm_placement')
    .selectAll()
    .where('shop_id', '=', caller.shopId)
    .where('build_id', '=', buildId)
    .orderBy('seq')
    .execute();
  return (await listedOf(tx, caller, buildId, rows)).map((row) => ({
    id: row.id,
    armId: row.arm_id,
    cylinder: row.cylinder,
    valve: row.valve,
    reason: row.reason,
    seq: row.seq,
    by: row.by_name,
    at: row.created_at,
  }));
}

/** Which arm sits on which valve now: for each arm its last place, for each valve the last arm put there. */
export function nowOnValves(placements: readonly Placement[]): Placement[] {
  const byValve = new Map<string, Placement>();
  for (const placement of placements) {
    for (const [valve, standing] of byValve) if (standing.armId === placement.armId) byValve.delete(valve);
    byValve.set(`${placement.cylinder} ${placement.valve}`, placement);
  }
  return [...byValve.values()].sort((a, b) => a.cylinder - b.cylinder || a.valve.localeCompare(b.valve));
}
