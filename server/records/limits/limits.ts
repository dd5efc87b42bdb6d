import type { Selectable } from 'kysely';
import { InputFaults } from '../../../shared/problems/faults.ts';
import { isUnit } from '../../../shared/quantities/units.ts';
import type { NewLimit } from '../../../shared/schemas/limits.ts';
import { author, type Principal, requireAdministrator, requireDesk } from '../../auth/principal.ts';
import type { Tx } from '../../database/database.ts';
import { everyColumn } from '../../database/tables/every-column.ts';
import type { ShopLimitTable } from '../../database/tables/sheet.ts';
import { isLimitName, type LimitName } from '../../mechanics/kit/limits.ts';
import { defaultOf, LIMIT_NAMES, type Limit } from './known-limits.ts';

function toLimit(name: LimitName, row: Selectable<ShopLimitTable>): Limit {
  if (!isUnit(row.unit)) throw new Error(`a stored limit has the unknown unit ${row.unit}`);
  return {
    ...defaultOf(name),
    value: { value: row.value, unit: row.unit, readAs: row.read_as },
    source: row.source,
    revision: row.revision,
    by: row.by_name,
    at: row.created_at,
  };
}

/** Everything a shop ever set, oldest first. */
export const selectLimits = (tx: Tx, shopId: string) =>
  tx.selectFrom('shop_limit').selectAll().where('shop_id', '=', shopId).orderBy('revision');

/** The limits that count in a shop now. Whoever works on one of its builds works by them. */
export function limitsInForce(rows: readonly Selectable<ShopLimitTable>[]): ReadonlyMap<LimitName, Limit> {
  const inForce = new Map(LIMIT_NAMES.map((name) => [name, defaultOf(name)] as const));
  for (const row of rows) if (isLimitName(row.name)) inForce.set(row.name, toLimit(row.name, row));
  return inForce;
}

export async function listLimits(tx: Tx, principal: Principal): Promise<Limit[]> {
  requireDesk(principal, 'read');
  return [...limitsInForce(await selectLimits(tx, principal.shopId).execute()).values()];
}

function unknownLimits(changes: readonly NewLimit[]): void {
  const faults = changes.flatMap((change, index) =>
    isLimitName(change.name)
      ? []
      : [
          {
            pointer: `/limits/${index}/name`,
            code: 'not-allowed' as const,
            detail: `is no limit; allowed: ${LIMIT_NAMES.join(', ')}`,
            received: change.name,
          },
        ],
  );
  if (faults.length > 0) throw new InputFaults(faults);
}

/** Sets limits for the shop. The earlier figures stay, so that what was judged by them can still be read. */
export async function changeLimits(
  tx: Tx,
  principal: Principal,
  changes: readonly NewLimit[],
): Promise<Limit[]> {
  requireAdministrator(principal);
  unknownLimits(changes);
  // The shop's row is locked, so that two changes at once get revisions one after the other.
  await tx.selectFrom('shop').select('id').where('id', '=', principal.shopId).forUpdate().execute();
  for (const { name, value, source } of changes) {
    const { last } = await tx
      .selectFrom('shop_limit')
      .select(({ fn }) => fn.max('revision').as('last'))
      .where('shop_id', '=', principal.shopId)
      .where('name', '=', name)
      .executeTakeFirstOrThrow();
    await tx
      .insertInto('shop_limit')
      .values(
        everyColumn<ShopLimitTable>({
          shop_id: principal.shopId,
          name,
          revision: (last ?? 0) + 1,
          value: value.value,
          unit: value.unit,
          typed: value.typed,
          read_as: value.readAs,
          source,
          ...author(principal),
        }),
      )
      .execute();
  }
  return listLimits(tx, principal);
}
