import type { z } from 'zod';
import type { newArm } from '../../shared/schemas/commands.ts';
import { author, type Caller } from '../access/caller.ts';
import type { Tx } from '../database/database.ts';
import { Failure } from '../problems/failure.ts';
import { rowsOfBuild } from '../record/readable.ts';
import { onBuild } from '../record/record.ts';

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
  caller: Caller,
  buildId: string,
  input: z.output<typeof newArm>,
): Promise<Arm> {
  return onBuild(tx, caller, buildId, async ({ emit }) => {
    const row = await tx
      .insertInto('arm')
      .values({
        shop_id: caller.shopId,
        build_id: buildId,
        name: input.name,
        family: input.family,
        ratio_stamp: input.ratioStamp,
        other_number: input.otherNumber,
        box_label: input.boxLabel,
        ...author(caller),
      })
      .onConflict((conflict) => conflict.columns(['shop_id', 'build_id', 'name']).doNothing())
      .returning(['id', 'created_at'])
      .executeTakeFirst();
    if (row === undefined)
      throw new Failure('conflict', `this build already has an arm called “${input.name}”`);
    await emit('arm-added', { armId: row.id, ...input });
    return { id: row.id, ...input, by: caller.name, at: row.created_at };
  });
}

export async function listArms(tx: Tx, caller: Caller, buildId: string): Promise<Arm[]> {
  const rows = await rowsOfBuild(
    tx,
    caller,
    buildId,
    tx.selectFrom('arm').selectAll().orderBy('created_at').orderBy('id'),
  );
  return rows.map((row) => ({
    id: row.id,
    name: row.name,
    family: row.family,
    ratioStamp: row.ratio_stamp,
    otherNumber: row.other_number,
    boxLabel: row.box_label,
    by: row.by_name,
    at: row.created_at,
  }));
}
