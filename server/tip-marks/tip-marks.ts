import type { CorrectTipMark, NewTipMark } from '../../shared/schemas/tip-mark.ts';
import { author, type Caller } from '../access/caller.ts';
import { listPlacements, nowOnValves } from '../builds/placements.ts';
import { refuseWhileHeld } from '../calls/hold.ts';
import type { Tx } from '../database/database.ts';
import { listEntries, shown } from '../record/corrections/entries.ts';
import { replaceEntry } from '../record/corrections/replace.ts';
import { onBuild } from '../record/record.ts';
import { columnsOf, markReadAs, TIP_MARKS, type TipMark } from './tip-mark-table.ts';

/** Keeps a mark. One found after running takes no turning, but the step it belongs to does: a hold stops both. */
export async function keepTipMark(
  tx: Tx,
  caller: Caller,
  buildId: string,
  input: NewTipMark,
): Promise<TipMark> {
  return onBuild(tx, caller, buildId, async ({ emit }) => {
    await refuseWhileHeld(tx, caller, buildId);
    const { cylinder, valve, ...mark } = input;
    const now = nowOnValves(await listPlacements(tx, caller, buildId));
    const arm = now.find((each) => each.cylinder === cylinder && each.valve === valve);
    const { found, spring, pushrodOver } = mark;
    const seq = await emit('tip-mark-kept', {
      cylinder,
      valve,
      readAs: markReadAs(mark),
      found,
      spring,
      pushrodOver,
    });
    const row = await tx
      .insertInto('tip_mark')
      .values({
        shop_id: caller.shopId,
        build_id: buildId,
        seq,
        cylinder,
        valve,
        ...columnsOf(mark),
        arm_id: arm?.armId ?? null,
        replaces: null,
        ...author(caller),
      })
      .returningAll()
      .executeTakeFirstOrThrow();
    return shown(TIP_MARKS, row);
  });
}

/** Puts another mark in the place of one, or strikes it out, with the reason; the old one stays where it was. */
export async function replaceTipMark(
  tx: Tx,
  caller: Caller,
  buildId: string,
  id: string,
  { reason, width, side, ...rest }: CorrectTipMark,
): Promise<TipMark> {
  const mark = width === undefined || side === undefined ? undefined : { width, side, ...rest };
  return replaceEntry(TIP_MARKS, tx, caller, { buildId, id, reason }, (old) => ({
    about: { cylinder: old.cylinder, valve: old.valve },
    instead: mark === undefined ? undefined : { readAs: markReadAs(mark), found: mark.found },
    keep: (columns) => {
      const { id: _, created_at: __, ...same } = old;
      return tx
        .insertInto('tip_mark')
        .values({ ...same, ...(mark === undefined ? {} : columnsOf(mark)), ...columns })
        .returningAll()
        .executeTakeFirstOrThrow();
    },
  }));
}

/** Every mark of a build in the order of entry, replaced and struck ones included. */
export const listTipMarks = (tx: Tx, caller: Caller, buildId: string): Promise<TipMark[]> =>
  listEntries(TIP_MARKS, tx, caller, buildId);
