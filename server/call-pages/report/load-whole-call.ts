import { type CallContext, loadContext } from '../../call/context.ts';
import type { Registered } from '../../compute/registry.ts';
import type { Tx } from '../../database/database.ts';
import type { PageAsked } from '../../web/page-request.ts';
import { type CallFrame, openSteps } from '../frame.ts';
import type { WholeCall } from './call-summary.ts';

type Computations = ReadonlyMap<string, Registered>;

/** A call with every step open. */
export function wholeCallOf(frame: CallFrame, context: CallContext, computations: Computations): WholeCall {
  const open = openSteps(frame, { context, computations });
  return { frame, context, open };
}

export async function loadWholeCall(
  frame: CallFrame,
  tx: Tx,
  req: PageAsked,
  computations: Computations,
): Promise<WholeCall> {
  return wholeCallOf(frame, await loadContext(tx, req), computations);
}
