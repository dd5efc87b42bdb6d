import type { Selectable } from 'kysely';
import { defined } from '../../../shared/defined.ts';
import type { Method, SetUpSaid } from '../../../shared/schemas/method.ts';
import type { ValveName } from '../../../shared/schemas/words.ts';
import type { Principal } from '../../auth/principal.ts';
import type { Tx } from '../../database/database.ts';
import type { SetUpStatementTable } from '../../database/tables/measuring.ts';

/** On which valve and with which arm it is read, and how. */
export interface SetUpFacts {
  readonly cylinder: number;
  readonly valve: ValveName;
  readonly armId: string | undefined;
  readonly method: Method;
}

/** What was learnt of a set-up later. It holds for the readings already there, as if it had been said with them. */
export interface SetUpStatement {
  readonly id: string;
  readonly setUpId: string;
  readonly seq: number;
  /** Only what is put right. */
  readonly said: SetUpSaid;
  readonly reason: string;
  readonly by: string;
  readonly byKind: string;
  readonly at: Date;
}

/** In the order they were said. */
export const selectStatements = (tx: Tx) => tx.selectFrom('set_up_statement').selectAll().orderBy('seq');

export const toStatement = (row: Selectable<SetUpStatementTable>): SetUpStatement => ({
  id: row.id,
  setUpId: row.set_up_id,
  seq: row.seq,
  said: row.said,
  reason: row.reason,
  by: row.by_name,
  byKind: row.by_kind,
  at: row.created_at,
});

/** Of a build that the principal may read: whoever asks has found its set-ups before. */
export async function listStatements(
  tx: Tx,
  principal: Principal,
  buildId: string,
): Promise<SetUpStatement[]> {
  const rows = await selectStatements(tx)
    .where('shop_id', '=', principal.shopId)
    .where('build_id', '=', buildId)
    .execute();
  return rows.map(toStatement);
}

function withSaid({ cylinder, valve, armId, method }: SetUpFacts, { said }: SetUpStatement): SetUpFacts {
  const unknown = new Set(said.notKnown);
  const { lashSetting, travel, pushedIn, ...rest } = { ...method, ...defined(said.method ?? {}) };
  const ifKnown = <Value>(name: 'lashSetting' | 'travel' | 'pushedIn', value: Value) =>
    unknown.has(name) ? undefined : value;
  return {
    cylinder: said.cylinder ?? cylinder,
    valve: said.valve ?? valve,
    armId: unknown.has('armId') ? undefined : (said.armId ?? armId),
    method: {
      ...rest,
      ...defined({
        lashSetting: ifKnown('lashSetting', lashSetting),
        travel: ifKnown('travel', travel),
        pushedIn: ifKnown('pushedIn', pushedIn),
      }),
    },
  };
}

/** A set-up with what was put right: of two statements about one fact the later counts. */
export const asItStands = (started: SetUpFacts, statements: readonly SetUpStatement[]): SetUpFacts =>
  statements.reduce(withSaid, started);
