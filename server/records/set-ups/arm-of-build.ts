import type { Principal } from '../../auth/principal.ts';
import type { Tx } from '../../database/database.ts';
import { rowOfBuild } from '../../events/rows-of-build.ts';

/** Refuses an arm that is not of this build. */
export async function armOfBuild(
  tx: Tx,
  principal: Principal,
  buildId: string,
  armId: string,
): Promise<void> {
  await rowOfBuild(principal, buildId, armId, 'arm', tx.selectFrom('arm').select('id'));
}
