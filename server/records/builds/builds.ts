import type { Selectable } from 'kysely';
import type { UnitSystem } from '../../../shared/quantities/units.ts';
import type { BuildSpec } from '../../../shared/schemas/build-spec.ts';
import { type Principal, requireBuild } from '../../auth/principal.ts';
import type { Tx } from '../../database/database.ts';
import type { BuildTable } from '../../database/tables/builds.ts';
import { notFound } from '../../problems/failure.ts';

export interface Build {
  readonly id: string;
  readonly label: string;
  readonly revision: number;
  /** Counts every change to the build or anything in it. */
  readonly version: number;
  /** What its calls are spoken in; entries are kept as they were made. */
  readonly units: UnitSystem;
  readonly spec: BuildSpec;
  readonly createdAt: Date;
}

type BuildRow = Pick<
  Selectable<BuildTable>,
  'id' | 'label' | 'revision' | 'last_seq' | 'units' | 'created_at'
>;

/** `spec` is that of the row's revision. */
export const toBuild = (row: BuildRow, spec: BuildSpec): Build => ({
  id: row.id,
  label: row.label,
  revision: row.revision,
  version: row.last_seq,
  units: row.units,
  spec,
  createdAt: row.created_at,
});

export async function getBuild(tx: Tx, principal: Principal, buildId: string): Promise<Build> {
  requireBuild(principal, buildId, 'read');
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
      'build.units',
      'build.created_at',
      'build_revision.spec',
    ])
    .where('build.shop_id', '=', principal.shopId)
    .where('build.id', '=', buildId)
    .executeTakeFirst();
  if (row === undefined) throw notFound('build');
  return toBuild(row, row.spec ?? {});
}
