import type { Selectable } from 'kysely';
import type { z } from 'zod';
import type { BuildSpec, buildSpec } from '../../../shared/schemas/build-spec.ts';
import { author, type Principal } from '../../auth/principal.ts';
import type { Tx } from '../../database/database.ts';
import type { BuildRevisionTable } from '../../database/tables/builds.ts';
import { everyColumn } from '../../database/tables/every-column.ts';
import { changeBuild } from '../../events/change-build.ts';
import { rowsOfBuild } from '../../events/rows-of-build.ts';
import { Failure } from '../../problems/failure.ts';
import type { Build } from './builds.ts';
import { BUILD_EVENTS } from './events.ts';

export interface Revision {
  readonly revision: number;
  readonly spec: BuildSpec;
  readonly reason: string;
  readonly by: string;
  readonly at: Date;
}

export const selectRevisions = (tx: Tx) => tx.selectFrom('build_revision').selectAll().orderBy('revision');

export const toRevision = (row: Selectable<BuildRevisionTable>): Revision => ({
  revision: row.revision,
  spec: row.spec,
  reason: row.reason,
  by: row.by_name,
  at: row.created_at,
});

export async function listRevisions(tx: Tx, principal: Principal, buildId: string): Promise<Revision[]> {
  return (await rowsOfBuild(tx, principal, buildId, selectRevisions(tx))).map(toRevision);
}

/** The specification as it was at one revision; old readings mean what they meant then. */
export const specAt = (revisions: readonly Revision[], revision: number): BuildSpec =>
  revisions.find((each) => each.revision === revision)?.spec ?? {};

/** Refuses a command of somebody who read another revision of the build than the one that stands. */
export function refuseStale({ revision }: Pick<Build, 'revision'>, expected: number | undefined): void {
  if (expected === undefined || expected === revision) return;
  throw new Failure('version-stale', `you read revision ${expected}; it is now at revision ${revision}`, {
    headers: { etag: `"${revision}"` },
  });
}

/**
 * Keeps a new revision of the build. `expected` is the version the writer read; a build that has since got
 * another revision is refused, both sides shown.
 */
export async function reviseBuild(
  tx: Tx,
  principal: Principal,
  buildId: string,
  input: { readonly spec: z.output<typeof buildSpec>; readonly reason: string },
  expectedRevision: number | undefined,
): Promise<Build> {
  return changeBuild(tx, principal, buildId, async ({ build, emit }) => {
    refuseStale(build, expectedRevision);
    const revision = build.revision + 1;
    await tx
      .insertInto('build_revision')
      .values(
        everyColumn<BuildRevisionTable>({
          shop_id: principal.shopId,
          build_id: buildId,
          revision,
          spec: JSON.stringify(input.spec),
          reason: input.reason,
          ...author(principal),
        }),
      )
      .execute();
    await tx
      .updateTable('build')
      .set({ revision })
      .where('shop_id', '=', principal.shopId)
      .where('id', '=', buildId)
      .execute();
    const version = await emit(BUILD_EVENTS['build-revised'], { revision, reason: input.reason });
    return {
      id: buildId,
      label: build.label,
      revision,
      version,
      units: build.units,
      spec: input.spec,
      createdAt: new Date(),
    };
  });
}
