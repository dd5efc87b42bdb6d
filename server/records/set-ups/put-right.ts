import type { z } from 'zod';
import { defined } from '../../../shared/defined.ts';
import type { correctSetUp, SetUpSaid } from '../../../shared/schemas/method.ts';
import { author, type Principal } from '../../auth/principal.ts';
import type { Tx } from '../../database/database.ts';
import { everyColumn } from '../../database/tables/every-column.ts';
import type { SetUpStatementTable } from '../../database/tables/measuring.ts';
import { changeBuild } from '../../events/change-build.ts';
import { Failure } from '../../problems/failure.ts';
import { armOfBuild } from './arm-of-build.ts';
import { SET_UP_EVENTS } from './events.ts';
import { getSetUp, type SetUp } from './set-ups.ts';
import { STRUCK } from './struck.ts';

/** What was said, as the event has it: lengths as they were read. */
function saidOf({ cylinder, valve, armId, method = {}, notKnown, struck }: SetUpSaid) {
  const { spring, lifter, lash, restsOn, alignment, lobeSource, tool } = method;
  const { lashSetting, graduation, perTurn, travel, pushedIn, errorLimit, lobeErrorLimit } = method;
  return {
    ...defined({
      struck,
      cylinder,
      valve,
      armId,
      spring,
      lifter,
      lash,
      restsOn,
      alignment,
      lobeSource,
      tool,
    }),
    ...defined({
      lashSetting: lashSetting?.readAs,
      graduation: graduation?.readAs,
      perTurn: perTurn?.readAs,
      travel: travel?.readAs,
      pushedIn: pushedIn?.readAs,
      errorLimit: errorLimit?.readAs,
      lobeErrorLimit: lobeErrorLimit?.readAs,
    }),
    notKnown: notKnown ?? [],
  };
}

/** One that readings stand of is not struck out: they are struck out first, each with its reason. */
async function refuseWithReadings(tx: Tx, { shopId }: Principal, { id }: SetUp) {
  const stands = await tx
    .selectFrom('reading')
    .select('id')
    .where('shop_id', '=', shopId)
    .where('set_up_id', '=', id)
    .where('struck', '=', false)
    .where(({ not, exists, selectFrom }) =>
      not(
        exists(
          selectFrom('reading as later')
            .select('later.id')
            .where('later.shop_id', '=', shopId)
            .whereRef('later.replaces', '=', 'reading.id'),
        ),
      ),
    )
    .executeTakeFirst();
  if (stands !== undefined)
    throw new Failure('conflict', 'readings of this set-up stand: strike them out first, or put it right');
}

/**
 * Puts right how a set-up was read, or on which valve: a later statement, which holds for the readings already there.
 * What was said before stays on the record, and so does one that is struck out. It turns nothing, so that a stop does not hold it up.
 */
export async function putSetUpRight(
  tx: Tx,
  principal: Principal,
  buildId: string,
  setUpId: string,
  { reason, ...said }: z.output<typeof correctSetUp>,
): Promise<SetUp> {
  return changeBuild(tx, principal, buildId, async ({ emit }) => {
    const setUp = await getSetUp(tx, principal, buildId, setUpId);
    const { id, number, cylinder, valve } = setUp;
    if (setUp.struck) throw new Failure('conflict', STRUCK);
    if (said.struck === true) await refuseWithReadings(tx, principal, setUp);
    if (said.armId !== undefined) await armOfBuild(tx, principal, buildId, said.armId);
    const seq = await emit(SET_UP_EVENTS['set-up-put-right'], {
      setUpId: id,
      number,
      cylinder,
      valve,
      said: saidOf(said),
      reason,
    });
    await tx
      .insertInto('set_up_statement')
      .values(
        everyColumn<SetUpStatementTable>({
          shop_id: principal.shopId,
          build_id: buildId,
          set_up_id: id,
          seq,
          said: JSON.stringify(said),
          reason,
          ...author(principal),
        }),
      )
      .execute();
    return getSetUp(tx, principal, buildId, id);
  });
}
