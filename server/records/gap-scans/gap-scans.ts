import { defined } from '../../../shared/defined.ts';
import type { CorrectGapScan, NewGapScan, PasteGapScan } from '../../../shared/schemas/gap-scan.ts';
import { author, type Principal } from '../../auth/principal.ts';
import type { Tx } from '../../database/database.ts';
import { everyColumn } from '../../database/tables/every-column.ts';
import type { GapScanTable } from '../../database/tables/gap-scans.ts';
import { changeBuild } from '../../events/change-build.ts';
import { listPlacements, nowOnValves } from '../arms/placements.ts';
import type { TurningCheck } from '../calls/stop-signs.ts';
import { shown } from '../corrections/entries.ts';
import { replaceEntry } from '../corrections/replace.ts';
import { GAP_SCAN_EVENTS } from './events.ts';
import { columnsOf, GAP_SCANS, type GapScan, scanReadAs } from './gap-scan-table.ts';
import { readingsOfText } from './scan-rows.ts';

const BEFORE = 'A scan that was read with the arms fitted before needs no turning: enter it as such.';

/** Keeps a scan. With the arms before it is history; with these it takes turning the engine. */
export async function keepGapScan(
  tx: Tx,
  principal: Principal,
  buildId: string,
  input: NewGapScan,
  refuseTurning: TurningCheck,
): Promise<GapScan> {
  return changeBuild(tx, principal, buildId, async ({ emit }) => {
    if (input.arms === 'these') await refuseTurning(tx, principal, buildId, BEFORE);
    const { cylinder, valve, spring, lifter, lash, arms, readings } = input;
    const now = nowOnValves(await listPlacements(tx, principal, buildId));
    const arm = now.find((each) => each.cylinder === cylinder && each.valve === valve);
    const seq = await emit(GAP_SCAN_EVENTS['gap-scan-kept'], {
      cylinder,
      valve,
      readAs: scanReadAs(readings),
      count: readings.length,
      spring,
      lifter,
      lash,
      arms,
    });
    const row = await tx
      .insertInto('gap_scan')
      .values(
        everyColumn<GapScanTable>({
          shop_id: principal.shopId,
          build_id: buildId,
          seq,
          ...columnsOf(input),
          arm_id: arms === 'before' ? null : (arm?.armId ?? null),
          replaces: null,
          ...author(principal),
        }),
      )
      .returningAll()
      .executeTakeFirstOrThrow();
    return shown(GAP_SCANS, row);
  });
}

/** A pasted scan as one that was sent row by row. */
export const scanOfText = ({ text, unit, keep: _, ...scan }: PasteGapScan): NewGapScan => ({
  ...scan,
  readings: readingsOfText(text, unit),
});

type PutRight = Omit<CorrectGapScan, 'reason' | 'unit' | 'text'>;

/** What the scan should be: what was said now over what it was; undefined where nothing was said but the reason. */
function putRight(was: GapScan, { reason: _, unit, text, ...said }: CorrectGapScan): GapScan | undefined {
  const right: PutRight = {
    ...said,
    ...(text === undefined ? {} : { readings: readingsOfText(text, unit) }),
  };
  const given = defined(right);
  if (Object.keys(given).length === 0) return undefined;
  const next = { ...was, ...given };
  // A lash that was not set after all has no setting.
  return next.lash === 'set' ? next : { ...next, lashSetting: undefined };
}

/** Puts a scan right, or strikes it out, with the reason; the old one stays where it was. */
export async function replaceGapScan(
  tx: Tx,
  principal: Principal,
  buildId: string,
  id: string,
  input: CorrectGapScan,
): Promise<GapScan> {
  const { reason } = input;
  return replaceEntry(GAP_SCANS, tx, principal, { buildId, id, reason }, (old, was, said) => {
    const next = putRight(was, input);
    const { cylinder, valve } = next ?? was;
    const struck = { cylinder, valve, ...said };
    return {
      struck,
      replaced: next === undefined ? undefined : { ...struck, readAs: scanReadAs(next.readings) },
      keep: (columns) => {
        const { id: _, created_at: __, ...same } = old;
        return tx
          .insertInto('gap_scan')
          .values({ ...same, ...columnsOf(next ?? was), ...columns })
          .returningAll()
          .executeTakeFirstOrThrow();
      },
    };
  });
}
