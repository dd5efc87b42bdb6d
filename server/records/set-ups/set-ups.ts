import type { Selectable } from 'kysely';
import type { Method, NewSetUp } from '../../../shared/schemas/method.ts';
import { author, type Principal } from '../../auth/principal.ts';
import type { Tx } from '../../database/database.ts';
import { everyColumn } from '../../database/tables/every-column.ts';
import type { SetUpTable } from '../../database/tables/measuring.ts';
import { changeBuild } from '../../events/change-build.ts';
import { rowOfBuild, rowsOfBuild } from '../../events/rows-of-build.ts';
import type { TurningCheck } from '../calls/stop-signs.ts';
import { SET_UP_EVENTS } from './events.ts';

/** How one set of readings is taken, on which valve, and which revision of the build it is read against. */
export interface SetUp {
  readonly id: string;
  readonly buildId: string;
  readonly number: number;
  readonly revision: number;
  readonly cylinder: number;
  readonly valve: 'intake' | 'exhaust';
  readonly armId: string | undefined;
  readonly method: Method;
  readonly by: string;
  readonly at: Date;
}

export const selectSetUps = (tx: Tx) => tx.selectFrom('set_up').selectAll().orderBy('number');

export function toSetUp(row: Selectable<SetUpTable>): SetUp {
  return {
    id: row.id,
    buildId: row.build_id,
    number: row.number,
    revision: row.revision,
    cylinder: row.cylinder,
    valve: row.valve === 'exhaust' ? 'exhaust' : 'intake',
    armId: row.arm_id ?? undefined,
    method: row.method,
    by: row.by_name,
    at: row.created_at,
  };
}

/** Starts a set-up. A changed method is a new set-up: what was read before keeps the method it was read by. */
export async function startSetUp(
  tx: Tx,
  principal: Principal,
  buildId: string,
  input: NewSetUp,
  refuseTurning: TurningCheck,
): Promise<SetUp> {
  return changeBuild(tx, principal, buildId, async ({ build, emit }) => {
    await refuseTurning(tx, principal, buildId);
    if (input.armId !== undefined) await armOfBuild(tx, principal, buildId, input.armId);
    const { count } = await tx
      .selectFrom('set_up')
      .select(({ fn }) => fn.countAll<number>().as('count'))
      .where('shop_id', '=', principal.shopId)
      .where('build_id', '=', buildId)
      .executeTakeFirstOrThrow();
    const row = await tx
      .insertInto('set_up')
      .values(
        everyColumn<SetUpTable>({
          shop_id: principal.shopId,
          build_id: buildId,
          number: count + 1,
          revision: build.revision,
          cylinder: input.cylinder,
          valve: input.valve,
          arm_id: input.armId ?? null,
          method: JSON.stringify(input.method),
          ...author(principal),
        }),
      )
      .returningAll()
      .executeTakeFirstOrThrow();
    await emit(SET_UP_EVENTS['set-up-started'], {
      setUpId: row.id,
      number: row.number,
      cylinder: input.cylinder,
      valve: input.valve,
      spring: input.method.spring,
      lifter: input.method.lifter,
      lash: input.method.lash,
    });
    return toSetUp(row);
  });
}

async function armOfBuild(tx: Tx, principal: Principal, buildId: string, armId: string): Promise<void> {
  await rowOfBuild(principal, buildId, armId, 'arm', tx.selectFrom('arm').select('id'));
}

export async function getSetUp(
  tx: Tx,
  principal: Principal,
  buildId: string,
  setUpId: string,
): Promise<SetUp> {
  return toSetUp(
    await rowOfBuild(principal, buildId, setUpId, 'set-up', tx.selectFrom('set_up').selectAll()),
  );
}

export async function listSetUps(tx: Tx, principal: Principal, buildId: string): Promise<SetUp[]> {
  return (await rowsOfBuild(tx, principal, buildId, selectSetUps(tx))).map(toSetUp);
}
