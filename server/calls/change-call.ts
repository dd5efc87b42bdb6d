import type { Selectable } from 'kysely';
import { type Caller, requireDesk } from '../access/caller.ts';
import type { Tx } from '../database/database.ts';
import type { CallTable } from '../database/tables/calls.ts';
import { Failure } from '../problems/failure.ts';
import { onBuild } from '../record/record.ts';
import { type Call, getCall, toCall } from './calls.ts';

type CallPatch = Partial<
  Pick<Selectable<CallTable>, 'engine_state' | 'contact' | 'held' | 'hold_reason' | 'closed_at'>
>;

/** Changes a call and records it as one event on its build. */
export async function changeCall(
  tx: Tx,
  caller: Caller,
  callId: string,
  change: (call: Call) => { patch: CallPatch; events: readonly { kind: string; data: object }[] },
): Promise<Call> {
  const before = await getCall(tx, caller, callId);
  return onBuild(tx, caller, before.buildId, async ({ emit }) => {
    const { patch, events } = change(before);
    const row = await tx
      .updateTable('call')
      .set(patch)
      .where('shop_id', '=', caller.shopId)
      .where('id', '=', callId)
      .returningAll()
      .executeTakeFirstOrThrow();
    for (const event of events) await emit(event.kind, { callId, ...event.data });
    return toCall(row);
  });
}

export function closeCall(tx: Tx, caller: Caller, callId: string, outcome: string): Promise<Call> {
  requireDesk(caller, 'write');
  return changeCall(tx, caller, callId, (call) => {
    if (call.closedAt !== undefined) throw new Failure('conflict', 'this call is closed already');
    return { patch: { closed_at: new Date() }, events: [{ kind: 'call-closed', data: { outcome } }] };
  });
}
