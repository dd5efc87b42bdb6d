import { loadContext } from '../../call/context.ts';
import type { Registered } from '../../compute/registry.ts';
import type { Tx } from '../../database/database.ts';
import type { PageRequest } from '../../web/page-route.ts';
import { type CallFrame, openSteps } from '../frame.ts';
import type { WholeCall } from './call-summary.ts';

/** A call with every step open. */
export async function loadWholeCall(
  frame: CallFrame,
  tx: Tx,
  req: PageRequest,
  computations: ReadonlyMap<string, Registered>,
): Promise<WholeCall> {
  const context = await loadContext(tx, req);
  const open = openSteps(frame, { context, computations });
  return { frame, context, open };
}
