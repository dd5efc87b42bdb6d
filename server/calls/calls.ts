import type { Selectable } from 'kysely';
import { sql } from 'kysely';
import type { z } from 'zod';
import type { openCall, triage } from '../../shared/schemas/commands.ts';
import { author, type Caller, requireBuild, requireDesk, requireStaff } from '../access/caller.ts';
import type { Tx } from '../database/database.ts';
import type { CallTable } from '../database/tables/calls.ts';
import { Failure, notFound } from '../problems/failure.ts';
import { onBuild } from '../record/record.ts';

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

function toCall(row: Selectable<CallTable>): Call {
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

async function nextCallNumber(tx: Tx, shopId: string): Promise<number> {
  const { next } = await tx
    .updateTable('shop')
    .set({ next_call_number: sql<number>`next_call_number + 1` })
    .where('id', '=', shopId)
    .returning('next_call_number as next')
    .executeTakeFirstOrThrow();
  return next - 1;
}

async function newBuild(tx: Tx, caller: Caller, label: string): Promise<string> {
  const { id } = await tx
    .insertInto('build')
    .values({ shop_id: caller.shopId, label, revision: 1 })
    .returning('id')
    .executeTakeFirstOrThrow();
  await tx
    .insertInto('build_revision')
    .values({ shop_id: caller.shopId, build_id: id, revision: 1, spec: '{}', reason: '', ...author(caller) })
    .execute();
  return id;
}

/** Opens a call, on a new build or on one that exists. A program opens it in the name of its key's maker. */
export async function open(tx: Tx, caller: Caller, input: z.output<typeof openCall>): Promise<Call> {
  requireDesk(caller, 'write');
  const openedBy = caller.kind === 'program' ? await makerOfKey(tx, caller) : requireStaff(caller).id;
  const buildId = input.buildId ?? (await newBuild(tx, caller, input.buildLabel));
  return onBuild(tx, caller, buildId, async ({ emit }) => {
    const row = await tx
      .insertInto('call')
      .values({
        shop_id: caller.shopId,
        build_id: buildId,
        number: await nextCallNumber(tx, caller.shopId),
        caller_name: input.callerName,
        caller_role: input.callerRole,
        call_back: input.callBack,
        goal: input.goal,
        opened_by: openedBy,
      })
      .returningAll()
      .executeTakeFirstOrThrow();
    await emit('call-opened', { callId: row.id, number: row.number, goal: row.goal });
    return toCall(row);
  });
}

async function makerOfKey(tx: Tx, caller: Caller): Promise<string> {
  const row = await tx
    .selectFrom('api_key')
    .select('created_by')
    .where('shop_id', '=', caller.shopId)
    .where('id', '=', caller.id)
    .executeTakeFirst();
  if (row === undefined) throw notFound('key');
  return row.created_by;
}

export async function getCall(tx: Tx, caller: Caller, callId: string): Promise<Call> {
  const row = await tx
    .selectFrom('call')
    .selectAll()
    .where('shop_id', '=', caller.shopId)
    .where('id', '=', callId)
    .executeTakeFirst();
  if (row === undefined) throw notFound('call');
  requireBuild(caller, row.build_id, 'read');
  if (caller.kind === 'builder' && caller.callId !== callId) throw notFound('call');
  return toCall(row);
}

export interface ListedCall extends Call {
  readonly buildLabel: string;
}

/** The shop's calls, newest first; `search` looks in number, caller, build and goal. */
export async function listCalls(
  tx: Tx,
  caller: Caller,
  options: {
    readonly search?: string | undefined;
    readonly before?: number | undefined;
    readonly limit: number;
  },
): Promise<ListedCall[]> {
  requireDesk(caller, 'read');
  const pattern = `%${(options.search ?? '').replace(/[\\%_]/g, '\\$&')}%`;
  const rows = await tx
    .selectFrom('call')
    .innerJoin('build', (join) =>
      join.onRef('build.shop_id', '=', 'call.shop_id').onRef('build.id', '=', 'call.build_id'),
    )
    .selectAll('call')
    .select('build.label as build_label')
    .where('call.shop_id', '=', caller.shopId)
    .$if(options.before !== undefined, (query) => query.where('call.number', '<', options.before ?? 0))
    .$if(options.search !== undefined && options.search !== '', (query) =>
      query.where((either) =>
        either.or([
          either('call.caller_name', 'ilike', pattern),
          either('build.label', 'ilike', pattern),
          either('call.goal', 'ilike', pattern),
          either(sql`call.number::text`, '=', options.search ?? ''),
        ]),
      ),
    )
    .orderBy('call.number', 'desc')
    .limit(options.limit)
    .execute();
  return rows.map((row) => ({ ...toCall(row), buildLabel: row.build_label }));
}

type CallPatch = Partial<
  Pick<Selectable<CallTable>, 'engine_state' | 'contact' | 'held' | 'hold_reason' | 'closed_at'>
>;

/** Changes a call and records it as one event on its build. */
async function changeCall(
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

const HOLD_ON_CONTACT = 'something hit, bent, came loose or turns tight';

/** Records the first question of a call. Where something hit, bent or came loose, the hold is set at once. */
export function recordTriage(
  tx: Tx,
  caller: Caller,
  callId: string,
  input: z.output<typeof triage>,
): Promise<Call> {
  return changeCall(tx, caller, callId, (call) => {
    const holds = input.contact === 'something' && !call.held;
    return {
      patch: {
        engine_state: input.engineState,
        contact: input.contact,
        ...(holds ? { held: true, hold_reason: HOLD_ON_CONTACT } : {}),
      },
      events: [
        { kind: 'triage', data: input },
        ...(holds ? [{ kind: 'hold-set', data: { reason: HOLD_ON_CONTACT } }] : []),
      ],
    };
  });
}

/** Anyone on the call may say stop. */
export function setHold(tx: Tx, caller: Caller, callId: string, reason: string): Promise<Call> {
  return changeCall(tx, caller, callId, () => ({
    patch: { held: true, hold_reason: reason },
    events: [{ kind: 'hold-set', data: { reason } }],
  }));
}

/** Only the desk lifts a hold, and says why. */
export function liftHold(tx: Tx, caller: Caller, callId: string, reason: string): Promise<Call> {
  requireDesk(caller, 'write');
  return changeCall(tx, caller, callId, (call) => {
    if (!call.held) throw new Failure('conflict', 'this call is not on hold');
    return {
      patch: { held: false, hold_reason: '' },
      events: [{ kind: 'hold-lifted', data: { reason, was: call.holdReason } }],
    };
  });
}

export function closeCall(tx: Tx, caller: Caller, callId: string, outcome: string): Promise<Call> {
  requireDesk(caller, 'write');
  return changeCall(tx, caller, callId, (call) => {
    if (call.closedAt !== undefined) throw new Failure('conflict', 'this call is closed already');
    return { patch: { closed_at: new Date() }, events: [{ kind: 'call-closed', data: { outcome } }] };
  });
}

/** Refuses a step that turns the engine while any open call of the build is held. */
export async function refuseWhileHeld(tx: Tx, caller: Caller, buildId: string): Promise<void> {
  const held = await tx
    .selectFrom('call')
    .select('hold_reason')
    .where('shop_id', '=', caller.shopId)
    .where('build_id', '=', buildId)
    .where('held', '=', true)
    .executeTakeFirst();
  if (held !== undefined) throw new Failure('held', `do not turn it: ${held.hold_reason}`);
}
