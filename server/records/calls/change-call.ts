import type { Selectable } from 'kysely';
import { type Principal, requireDesk } from '../../auth/principal.ts';
import type { Tx } from '../../database/database.ts';
import type { CallTable } from '../../database/tables/calls.ts';
import { changeBuild } from '../../events/change-build.ts';
import { Failure } from '../../problems/failure.ts';
import { type Call, getCall, toCall } from './calls.ts';

type CallPatch = Partial<
  Pick<Selectable<CallTable>, 'engine_state' | 'contact' | 'held' | 'hold_reason' | 'closed_at'>
>;

/** Changes a call and records it as one event on its build. */
export async function changeCall(
  tx: Tx,
  principal: Principal,
  callId: string,
  change: (call: Call) => { patch: CallPatch; events: readonly { kind: string; data: object }[] },
): Promise<Call> {
  const before = await getCall(tx, principal, callId);
  return changeBuild(tx, principal, before.buildId, async ({ emit }) => {
    const { patch, events } = change(before);
    const row = await tx
      .updateTable('call')
      .set(patch)
      .where('shop_id', '=', principal.shopId)
      .where('id', '=', callId)
      .returningAll()
      .executeTakeFirstOrThrow();
    for (const event of events) await emit(event.kind, { callId, ...event.data });
    return toCall(row);
  });
}

export function closeCall(tx: Tx, principal: Principal, callId: string, outcome: string): Promise<Call> {
  requireDesk(principal, 'write');
  return changeCall(tx, principal, callId, (call) => {
    if (call.closedAt !== undefined) throw new Failure('conflict', 'this call is closed already');
    return { patch: { closed_at: new Date() }, events: [{ kind: 'call-closed', data: { outcome } }] };
  });
}
