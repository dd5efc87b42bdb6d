import type { Caller } from '../access/caller.ts';
import type { Tx } from '../database/database.ts';
import { notFound } from '../problems/failure.ts';

/**
 * The rows of a build's list; where there are none, the build itself must be there, so that a list of a build
 * that is another shop's, or never was, is no list.
 */
export async function listedOf<Row>(
  tx: Tx,
  caller: Caller,
  buildId: string,
  rows: readonly Row[],
): Promise<readonly Row[]> {
  if (rows.length > 0) return rows;
  const build = await tx
    .selectFrom('build')
    .select('id')
    .where('shop_id', '=', caller.shopId)
    .where('id', '=', buildId)
    .executeTakeFirst();
  if (build === undefined) throw notFound('build');
  return rows;
}
