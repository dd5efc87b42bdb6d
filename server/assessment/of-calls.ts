import { KeptFew } from '../../shared/kept-few.ts';
import { type Principal, requireDesk } from '../auth/principal.ts';
import type { Tx } from '../database/database.ts';
import { readTogether } from '../database/read-together.ts';
import type { Assessment } from '../mechanics/assessment/assessment.ts';
import type { ListedCall } from '../records/calls/list-calls.ts';
import { selectCatalogueRatios, selectCatalogueState } from '../records/catalogue/families.ts';
import { selectLimits } from '../records/limits/limits.ts';
import { callOf } from '../records/whole-build/build-record.ts';
import { loadBuildRecord } from '../records/whole-build/load-build.ts';
import { assessedFor } from './assessed.ts';

const MOST_KEPT = 2_000;
const kept = new KeptFew<Assessment>(MOST_KEPT);

/** What counts for every build of a shop, as a text that changes with it. */
async function shopStands(tx: Tx, { shopId }: Principal): Promise<string> {
  const rows = await readTogether(tx, {
    limits: selectLimits(tx, shopId),
    ratios: selectCatalogueRatios(tx, shopId),
    catalogue: selectCatalogueState(tx, shopId),
  });
  return JSON.stringify(rows);
}

/** What is said of the build of each listed call. A build that has not changed since is not read again. */
export async function assessmentsOf(
  tx: Tx,
  principal: Principal,
  calls: readonly ListedCall[],
): Promise<ReadonlyMap<string, Assessment>> {
  requireDesk(principal, 'read');
  if (calls.length === 0) return new Map();
  const stands = await shopStands(tx, principal);
  const found = new Map<string, Assessment>();
  for (const { id, buildVersion } of calls) {
    const key = `${id} ${buildVersion} ${stands}`;
    const known = kept.get(key);
    if (known !== undefined) {
      found.set(id, known);
      continue;
    }
    const record = await loadBuildRecord(tx, principal, { callId: id });
    const assessment = assessedFor(record, callOf(record, id));
    kept.set(key, assessment);
    found.set(id, assessment);
  }
  return found;
}
