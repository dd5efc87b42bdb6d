import type { z } from 'zod';
import type { armMarks } from '../../../shared/schemas/commands.ts';
import { author, type Principal } from '../../auth/principal.ts';
import type { Tx } from '../../database/database.ts';
import type { ArmMarkedTable } from '../../database/tables/builds.ts';
import { everyColumn } from '../../database/tables/every-column.ts';
import { changeBuild } from '../../events/change-build.ts';
import { rowOfBuild } from '../../events/rows-of-build.ts';
import { Failure } from '../../problems/failure.ts';
import { type Arm, selectArms, toArm } from './arms.ts';
import { ARM_EVENTS } from './events.ts';

/**
 * Reads the marks of an arm again, or adds those that nobody had read. What is left out stays as it is; what it was put on
 * record with stays in the record.
 */
export async function markArm(
  tx: Tx,
  principal: Principal,
  { buildId, armId }: { readonly buildId: string; readonly armId: string },
  input: z.output<typeof armMarks>,
): Promise<Arm> {
  return changeBuild(tx, principal, buildId, async ({ emit }) => {
    const arm = toArm(await rowOfBuild(principal, buildId, armId, 'arm', selectArms(tx)));
    const { ratioStamp = arm.ratioStamp, otherNumber = arm.otherNumber, boxLabel = arm.boxLabel } = input;
    const { reason } = input;
    const isAsItWas =
      ratioStamp === arm.ratioStamp && otherNumber === arm.otherNumber && boxLabel === arm.boxLabel;
    if (isAsItWas) throw new Failure('conflict', `${arm.name} has these marks on record already`);
    const marked = { armId, arm: arm.name, ratioStamp, otherNumber, boxLabel, reason };
    const seq = await emit(ARM_EVENTS['arm-marked'], marked);
    await tx
      .insertInto('arm_marked')
      .values(
        everyColumn<ArmMarkedTable>({
          shop_id: principal.shopId,
          build_id: buildId,
          arm_id: armId,
          ratio_stamp: ratioStamp,
          other_number: otherNumber,
          box_label: boxLabel,
          reason,
          seq,
          ...author(principal),
        }),
      )
      .execute();
    return { ...arm, ratioStamp, otherNumber, boxLabel };
  });
}
