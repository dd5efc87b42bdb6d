import type { Selectable } from 'kysely';
import type { NewSetUp } from '../../../shared/schemas/method.ts';
import { storedWord, VALVES } from '../../../shared/schemas/words.ts';
import { author, type Principal } from '../../auth/principal.ts';
import type { Tx } from '../../database/database.ts';
import { everyColumn } from '../../database/tables/every-column.ts';
import type { SetUpTable } from '../../database/tables/measuring.ts';
import { changeBuild } from '../../events/change-build.ts';
import { rowOfBuild, rowsOfBuild } from '../../events/rows-of-build.ts';
import type { TurningCheck } from '../calls/stop-signs.ts';
import { armOfBuild } from './arm-of-build.ts';
import { SET_UP_EVENTS } from './events.ts';
import { asItStands, listStatements, type SetUpFacts, type SetUpStatement } from './statements.ts';

/** How one set of readings is taken, as it stands now, and which revision of the build it is read against. */
export interface SetUp extends SetUpFacts {
  readonly id: string;
  readonly buildId: string;
  readonly number: number;
  readonly revision: number;
  /** As it was said before the first reading. */
  readonly started: SetUpFacts;
  /** It was begun by mistake: nothing is read in it, and nothing asked of it. */
  readonly struck: boolean;
  /** What was put right since, in the order it was said. */
  readonly statements: readonly SetUpStatement[];
  readonly by: string;
  readonly at: Date;
}

export const selectSetUps = (tx: Tx) => tx.selectFrom('set_up').selectAll().orderBy('number');

/** As it was started; what was put right since is put to it by withStatements. */
export function toSetUp(row: Selectable<SetUpTable>): SetUp {
  const started: SetUpFacts = {
    cylinder: row.cylinder,
    valve: storedWord(VALVES, row.valve),
    armId: row.arm_id ?? undefined,
    method: row.method,
  };
  return {
    id: row.id,
    buildId: row.build_id,
    number: row.number,
    revision: row.revision,
    ...started,
    started,
    struck: false,
    statements: [],
    by: row.by_name,
    at: row.created_at,
  };
}

/** The set-up as it stands now, with those of the statements that are about it. */
export function withStatements(setUp: SetUp, all: readonly SetUpStatement[]): SetUp {
  const statements = all.filter(({ setUpId }) => setUpId === setUp.id);
  const struck = statements.some(({ said }) => said.struck === true);
  return { ...setUp, ...asItStands(setUp.started, statements), struck, statements };
}

/** Those that were not struck out. */
export const standingSetUps = (setUps: readonly SetUp[]): SetUp[] => setUps.filter(({ struck }) => !struck);

const OPEN = 'Marks, photographs, sizes of a loose part and notes can still be entered.';

/**
 * Starts a set-up. What is done another way from now on is a new set-up: what was read before keeps the method it
 * was read by. What was said wrongly, or learnt late, is put right.
 */
export async function startSetUp(
  tx: Tx,
  principal: Principal,
  buildId: string,
  input: NewSetUp,
  refuseTurning: TurningCheck,
): Promise<SetUp> {
  return changeBuild(tx, principal, buildId, async ({ build, emit }) => {
    await refuseTurning(tx, principal, buildId, OPEN);
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

export async function getSetUp(
  tx: Tx,
  principal: Principal,
  buildId: string,
  setUpId: string,
): Promise<SetUp> {
  const row = await rowOfBuild(principal, buildId, setUpId, 'set-up', tx.selectFrom('set_up').selectAll());
  return withStatements(toSetUp(row), await listStatements(tx, principal, buildId));
}

export async function listSetUps(tx: Tx, principal: Principal, buildId: string): Promise<SetUp[]> {
  const rows = await rowsOfBuild(tx, principal, buildId, selectSetUps(tx));
  const statements = await listStatements(tx, principal, buildId);
  return rows.map((row) => withStatements(toSetUp(row), statements));
}
