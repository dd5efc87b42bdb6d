import { type Selectable, sql } from 'kysely';
import type { z } from 'zod';
import type { newArm } from '../../../shared/schemas/commands.ts';
import { author, type Principal } from '../../auth/principal.ts';
import type { Tx } from '../../database/database.ts';
import type { ArmTable } from '../../database/tables/builds.ts';
import { everyColumn } from '../../database/tables/every-column.ts';
import { changeBuild } from '../../events/change-build.ts';
import { rowsOfBuild } from '../../events/rows-of-build.ts';
import { Failure } from '../../problems/failure.ts';
import { ARM_EVENTS } from './events.ts';

export interface Arm {
  readonly id: string;
  readonly name: string;
  readonly family: string;
  readonly ratioStamp: string;
  readonly otherNumber: string;
  readonly boxLabel: string;
  readonly by: string;
  readonly at: Date;
}

export async function addArm(
  tx: Tx,
  principal: Principal,
  buildId: string,
  input: z.output<typeof newArm>,
): Promise<Arm> {
  return changeBuild(tx, principal, buildId, async ({ emit }) => {
    const row = await tx
      .insertInto('arm')
      .values(
        everyColumn<ArmTable>({
          shop_id: principal.shopId,
          build_id: buildId,
          name: input.name,
          family: input.family,
          ratio_stamp: input.ratioStamp,
          other_number: input.otherNumber,
          box_label: input.boxLabel,
          ...author(principal),
        }),
      )
      .onConflict((conflict) => conflict.columns(['shop_id', 'build_id', 'name']).doNothing())
      .returning(['id', 'created_at'])
      .executeTakeFirst();
    if (row === undefined)
      throw new Failure('conflict', `this build already has an arm called “${input.name}”`);
    const { name, family, ratioStamp, otherNumber, boxLabel } = input;
    const added = { armId: row.id, name, family, ratioStamp, otherNumber, boxLabel };
    await emit(ARM_EVENTS['arm-added'], added);
    return { id: row.id, ...input, by: principal.name, at: row.created_at };
  });
}

/** Marks that were read again. */
interface ReadAgain {
  readonly ratioStamp: string;
  readonly otherNumber: string;
  readonly boxLabel: string;
}

type ArmRow = Selectable<ArmTable> & { readonly again: ReadAgain | null };

/** In the order they were added, each with its marks as they were read last. */
export const selectArms = (tx: Tx) =>
  tx
    .selectFrom('arm')
    .selectAll()
    .select(
      sql<ReadAgain | null>`(
        select jsonb_build_object(
          'ratioStamp', newer.ratio_stamp, 'otherNumber', newer.other_number, 'boxLabel', newer.box_label)
        from arm_marked newer
        where newer.shop_id = arm.shop_id and newer.arm_id = arm.id order by newer.seq desc limit 1
      )`.as('again'),
    )
    .orderBy('created_at')
    .orderBy('id');

export const toArm = (row: ArmRow): Arm => ({
  id: row.id,
  name: row.name,
  family: row.family,
  ratioStamp: row.again?.ratioStamp ?? row.ratio_stamp,
  otherNumber: row.again?.otherNumber ?? row.other_number,
  boxLabel: row.again?.boxLabel ?? row.box_label,
  by: row.by_name,
  at: row.created_at,
});

export async function listArms(tx: Tx, principal: Principal, buildId: string): Promise<Arm[]> {
  return (await rowsOfBuild(tx, principal, buildId, selectArms(tx))).map(toArm);
}
