import type { Selectable } from 'kysely';
import { type Principal, requireDesk } from '../../auth/principal.ts';
import type { Tx } from '../../database/database.ts';
import type { CallTable } from '../../database/tables/calls.ts';
import { changeBuild, type Emit } from '../../events/change-build.ts';
import { Failure } from '../../problems/failure.ts';
import { type Call, getCall, toCall } from './calls.ts';
import { CALL_EVENTS } from './events.ts';

type CallPatch = Partial<
  Pick<Selectable<CallTable>, 'engine_state' | 'contact' | 'held' | 'hold_reason' | 'closed_at'>
>;

/** Changes a call, with the events that its build's log gets of that. */
export async function changeCall(
  tx: Tx,
  principal: Principal,
  callId: string,
  change: (call: Call, emit: Emit) => Promise<CallPatch>,
): Promise<Call> {
  const before = await getCall(tx, principal, callId);
  return changeBuild(tx, principal, before.buildId, async ({ emit }) => {
    const patch = await change(before, emit);
    const row = await tx
      .updateTable('call')
      .set(patch)
      .where('shop_id', '=', principal.shopId)
      .where('id', '=', callId)
      .returningAll()
      .executeTakeFirstOrThrow();
    return toCall(row);
  });
}

export function closeCall(tx: Tx, principal: Principal, callId: string, outcome: string): Promise<Call> {
  requireDesk(principal, 'write');
  return changeCall(tx, principal, callId, async (call, emit) => {
    if (call.closedAt !== undefined) throw new Failure('conflict', 'this call is closed already');
    await emit(CALL_EVENTS['call-closed'], { callId, outcome });
    return { closed_at: new Date() };
  });
}
