import type { Tx } from '../database/database.ts';
import { type Principal, requireStaff } from './principal.ts';

/** Turns the single-key shortcuts of one's own pages on or off. */
export async function setShortcuts(tx: Tx, principal: Principal, on: boolean): Promise<void> {
  const staff = requireStaff(principal);
  await tx
    .updateTable('staff')
    .set({ shortcuts: on })
    .where('shop_id', '=', principal.shopId)
    .where('id', '=', staff.id)
    .execute();
}
