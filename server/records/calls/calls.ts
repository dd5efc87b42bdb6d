import type { Selectable } from 'kysely';
import { type Principal, requireBuild } from '../../auth/principal.ts';
import type { Tx } from '../../database/database.ts';
import type { CallTable } from '../../database/tables/calls.ts';
import { notFound } from '../../problems/failure.ts';

export interface Call {
  readonly id: string;
  readonly number: number;
  readonly buildId: string;
  readonly callerName: string;
  readonly callerRole: string;
  readonly callBack: string;
  readonly goal: string;
  readonly engineState: string;
  readonly contact: string;
  readonly held: boolean;
  readonly holdReason: string;
  readonly openedAt: Date;
  readonly closedAt: Date | undefined;
}

export function toCall(row: Selectable<CallTable>): Call {
  return {
    id: row.id,
    number: row.number,
    buildId: row.build_id,
    callerName: row.caller_name,
    callerRole: row.caller_role,
    callBack: row.call_back,
    goal: row.goal,
    engineState: row.engine_state,
    contact: row.contact,
    held: row.held,
    holdReason: row.hold_reason,
    openedAt: row.opened_at,
    closedAt: row.closed_at ?? undefined,
  };
}

export async function getCall(tx: Tx, principal: Principal, callId: string): Promise<Call> {
  const row = await tx
    .selectFrom('call')
    .selectAll()
    .where('shop_id', '=', principal.shopId)
    .where('id', '=', callId)
    .executeTakeFirst();
  if (row === undefined) throw notFound('call');
  requireBuild(principal, row.build_id, 'read');
  const call = toCall(row);
  if (!seesCall(principal, call)) throw notFound('call');
  return call;
}

/** Whether a caller may see this call: a builder's link shows its own call alone. */
export const seesCall = (principal: Principal, { id }: Pick<Call, 'id'>): boolean =>
  principal.kind !== 'builder' || principal.callId === id;

/** The calls about a build, first one first. */
export const selectCalls = (tx: Tx) => tx.selectFrom('call').selectAll().orderBy('number');
