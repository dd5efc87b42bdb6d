import type { Principal } from '../../auth/principal.ts';
import type { Tx } from '../../database/database.ts';
import type { StopReason } from '../../mechanics/assessment/assessment.ts';
import { stopsOf } from '../../mechanics/assessment/stops-of.ts';
import { mayBeStopped } from '../../records/calls/stop-signs.ts';
import { loadBuildRecord } from '../../records/whole-build/load-build.ts';
import { callMeant } from '../assessed.ts';
import { evidenceOf } from '../evidence.ts';

/** What stops a build as it stands at this moment of the transaction. */
export async function standingStops(
  tx: Tx,
  principal: Principal,
  buildId: string,
): Promise<readonly StopReason[]> {
  const found = await tx
    .selectFrom('build')
    .select(mayBeStopped(principal, buildId).as('stopped'))
    .where('shop_id', '=', principal.shopId)
    .where('id', '=', buildId)
    .executeTakeFirst();
  if (found?.stopped !== true) return [];
  const record = await loadBuildRecord(tx, principal, { buildId }, { catalogue: 'no', access: 'write' });
  return stopsOf(evidenceOf(record, callMeant(record, undefined)));
}
