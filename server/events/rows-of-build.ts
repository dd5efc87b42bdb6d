import type { CompiledQuery, Expression } from 'kysely';
import { type Principal, requireBuild } from '../auth/principal.ts';
import type { Tx } from '../database/database.ts';
import { notFound } from '../problems/failure.ts';

/** As much of a query as the rows of one build are found by; the query of every table of a build is one. */
export interface BuildQuery<Row> {
  where(column: 'shop_id' | 'build_id', operator: '=', value: string | Expression<string>): BuildQuery<Row>;
  compile(): CompiledQuery<Row>;
  execute(): Promise<Row[]>;
}
interface RowQuery<Row> {
  where(column: 'shop_id' | 'build_id' | 'id', operator: '=', value: string): RowQuery<Row>;
  executeTakeFirst(): Promise<Row | undefined>;
}

/**
 * The rows of a build's list, for whom may read the build. Where there are none, the build itself must be there,
 * so that a list of a build that is another shop's, or never was, is no list.
 */
export async function rowsOfBuild<Row>(
  tx: Tx,
  principal: Principal,
  buildId: string,
  query: BuildQuery<Row>,
): Promise<readonly Row[]> {
  requireBuild(principal, buildId, 'read');
  const rows = await query.where('shop_id', '=', principal.shopId).where('build_id', '=', buildId).execute();
  if (rows.length > 0) return rows;
  const build = await tx
    .selectFrom('build')
    .select('id')
    .where('shop_id', '=', principal.shopId)
    .where('id', '=', buildId)
    .executeTakeFirst();
  if (build === undefined) throw notFound('build');
  return rows;
}

/** The one row of a build with this id, for whom may read the build; `what` names it where there is none. */
export async function rowOfBuild<Row>(
  principal: Principal,
  buildId: string,
  id: string,
  what: string,
  query: RowQuery<Row>,
): Promise<Row> {
  requireBuild(principal, buildId, 'read');
  const row = await query
    .where('shop_id', '=', principal.shopId)
    .where('build_id', '=', buildId)
    .where('id', '=', id)
    .executeTakeFirst();
  if (row === undefined) throw notFound(what);
  return row;
}
