import { sql } from 'kysely';
import type { z } from 'zod';
import type { openCall } from '../../shared/schemas/commands.ts';
import { author, type Caller, requireDesk, requireStaff } from '../access/caller.ts';
import type { Tx } from '../database/database.ts';
import { notFound } from '../problems/failure.ts';
import { onBuild } from '../record/record.ts';
import { type Call, toCall } from './calls.ts';

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
export async function startCall(tx: Tx, caller: Caller, input: z.output<typeof openCall>): Promise<Call> {
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
