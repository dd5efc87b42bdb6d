import { sql } from 'kysely';
import type { z } from 'zod';
import type { openCall } from '../../../shared/schemas/commands.ts';
import { author, type Principal, requireDesk, requireStaff } from '../../auth/principal.ts';
import type { Tx } from '../../database/database.ts';
import type { BuildRevisionTable, BuildTable } from '../../database/tables/builds.ts';
import type { CallTable } from '../../database/tables/calls.ts';
import { everyColumn } from '../../database/tables/every-column.ts';
import { changeBuild } from '../../events/change-build.ts';
import { notFound } from '../../problems/failure.ts';
import { setUnits } from '../builds/units.ts';
import { type Call, toCall } from './calls.ts';
import { CALL_EVENTS } from './events.ts';

async function nextCallNumber(tx: Tx, shopId: string): Promise<number> {
  const { next } = await tx
    .updateTable('shop')
    .set({ next_call_number: sql<number>`next_call_number + 1` })
    .where('id', '=', shopId)
    .returning('next_call_number as next')
    .executeTakeFirstOrThrow();
  return next - 1;
}

async function newBuild(tx: Tx, principal: Principal, label: string): Promise<string> {
  const { id } = await tx
    .insertInto('build')
    .values(everyColumn<BuildTable>({ shop_id: principal.shopId, label, revision: 1, units: 'inch' }))
    .returning('id')
    .executeTakeFirstOrThrow();
  await tx
    .insertInto('build_revision')
    .values(
      everyColumn<BuildRevisionTable>({
        shop_id: principal.shopId,
        build_id: id,
        revision: 1,
        spec: '{}',
        reason: '',
        ...author(principal),
      }),
    )
    .execute();
  return id;
}

/** Opens a call, on a new build or on one that exists. A program opens it in the name of its key's maker. */
export async function startCall(
  tx: Tx,
  principal: Principal,
  input: z.output<typeof openCall>,
): Promise<Call> {
  requireDesk(principal, 'write');
  const openedBy =
    principal.kind === 'program' ? await makerOfKey(tx, principal) : requireStaff(principal).id;
  const buildId = input.buildId ?? (await newBuild(tx, principal, input.buildLabel));
  return changeBuild(tx, principal, buildId, async ({ build, emit }) => {
    const row = await tx
      .insertInto('call')
      .values(
        everyColumn<CallTable>({
          shop_id: principal.shopId,
          build_id: buildId,
          number: await nextCallNumber(tx, principal.shopId),
          caller_name: input.callerName,
          caller_role: input.callerRole,
          call_back: input.callBack,
          goal: input.goal,
          opened_by: openedBy,
        }),
      )
      .returningAll()
      .executeTakeFirstOrThrow();
    await emit(CALL_EVENTS['call-opened'], { callId: row.id, number: row.number, goal: input.goal });
    if (input.units !== undefined) await setUnits(tx, principal, build, input.units, emit);
    return toCall(row);
  });
}

async function makerOfKey(tx: Tx, principal: Principal): Promise<string> {
  const row = await tx
    .selectFrom('api_key')
    .select('created_by')
    .where('shop_id', '=', principal.shopId)
    .where('id', '=', principal.id)
    .executeTakeFirst();
  if (row === undefined) throw notFound('key');
  return row.created_by;
}
