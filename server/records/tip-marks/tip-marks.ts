import type { CorrectTipMark, NewTipMark } from '../../../shared/schemas/tip-mark.ts';
import { author, type Principal } from '../../auth/principal.ts';
import type { Tx } from '../../database/database.ts';
import { everyColumn } from '../../database/tables/every-column.ts';
import type { TipMarkTable } from '../../database/tables/marks-and-lash.ts';
import { changeBuild } from '../../events/change-build.ts';
import { listPlacements, nowOnValves } from '../arms/placements.ts';
import type { TurningCheck } from '../calls/stop-signs.ts';
import { shown } from '../corrections/entries.ts';
import { replaceEntry } from '../corrections/replace.ts';
import { TIP_MARK_EVENTS } from './events.ts';
import { columnsOf, markReadAs, TIP_MARKS, type TipMark } from './tip-mark-table.ts';

const FOUND = 'A mark found after running needs no turning: enter it as found so.';

/** Keeps a mark. One found after running is read with nothing turned; fresh ink is turned over, and so is what was not said. */
export async function keepTipMark(
  tx: Tx,
  principal: Principal,
  buildId: string,
  input: NewTipMark,
  refuseTurning: TurningCheck,
): Promise<TipMark> {
  return changeBuild(tx, principal, buildId, async ({ emit }) => {
    if (input.found !== 'after-running') await refuseTurning(tx, principal, buildId, FOUND);
    const { cylinder, valve, ...mark } = input;
    const now = nowOnValves(await listPlacements(tx, principal, buildId));
    const arm = now.find((each) => each.cylinder === cylinder && each.valve === valve);
    const { found, spring, pushrodOver } = mark;
    const seq = await emit(TIP_MARK_EVENTS['tip-mark-kept'], {
      cylinder,
      valve,
      readAs: markReadAs(mark),
      found,
      spring,
      pushrodOver,
    });
    const row = await tx
      .insertInto('tip_mark')
      .values(
        everyColumn<TipMarkTable>({
          shop_id: principal.shopId,
          build_id: buildId,
          seq,
          cylinder,
          valve,
          ...columnsOf(mark),
          arm_id: arm?.armId ?? null,
          replaces: null,
          ...author(principal),
        }),
      )
      .returningAll()
      .executeTakeFirstOrThrow();
    return shown(TIP_MARKS, row);
  });
}

/** Puts another mark in the place of one, or strikes it out, with the reason; the old one stays where it was. */
export async function replaceTipMark(
  tx: Tx,
  principal: Principal,
  buildId: string,
  id: string,
  { reason, width, side, ...rest }: CorrectTipMark,
): Promise<TipMark> {
  const mark = width === undefined || side === undefined ? undefined : { width, side, ...rest };
  return replaceEntry(TIP_MARKS, tx, principal, { buildId, id, reason }, (old, was, said) => {
    const struck = { cylinder: was.cylinder, valve: was.valve, ...said };
    return {
      struck,
      replaced: mark === undefined ? undefined : { ...struck, readAs: markReadAs(mark), found: mark.found },
      keep: (columns) => {
        const { id: _, created_at: __, ...same } = old;
        return tx
          .insertInto('tip_mark')
          .values({ ...same, ...(mark === undefined ? {} : columnsOf(mark)), ...columns })
          .returningAll()
          .executeTakeFirstOrThrow();
      },
    };
  });
}
