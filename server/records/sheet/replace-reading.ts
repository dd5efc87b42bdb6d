import type { z } from 'zod';
import { InputFaults } from '../../../shared/problems/faults.ts';
import type { Quantity } from '../../../shared/quantities/units.ts';
import type { Gauged } from '../../../shared/schemas/gauged.ts';
import type { SaidInTurns } from '../../../shared/schemas/said-in-turns.ts';
import type { correctSheetReading } from '../../../shared/schemas/sheet.ts';
import type { Principal } from '../../auth/principal.ts';
import type { Tx } from '../../database/database.ts';
import { replaceEntry } from '../corrections/replace.ts';
import { asLength, dialOf } from './said-in-turns.ts';
import { columnsOf, SHEET_READINGS, type SheetReading } from './sheet-table.ts';

function readAgain(said: Gauged | SaidInTurns, perTurn: Quantity | undefined): Gauged {
  const read = asLength(said, perTurn);
  if (read.ok) return read.reading;
  throw new InputFaults([
    { pointer: '/reading', code: 'not-allowed', detail: read.detail, received: said.typed },
  ]);
}

/** Replaces a reading of the sheet, or strikes it out, with the reason; the old one stays where it was. */
export async function replaceSheetReading(
  tx: Tx,
  principal: Principal,
  buildId: string,
  readingId: string,
  { reading: said, reason }: z.output<typeof correctSheetReading>,
): Promise<SheetReading> {
  const reading =
    said === undefined ? undefined : readAgain(said, await dialOf(tx, principal, buildId, undefined));
  return replaceEntry(SHEET_READINGS, tx, principal, { buildId, id: readingId, reason }, (old, was, said) => {
    const { cylinder, valve, kind } = was;
    const struck = { cylinder, valve, kind, ...said };
    return {
      struck,
      replaced: reading === undefined ? undefined : { ...struck, readAs: reading.readAs },
      keep: (columns) => {
        const { id: _, created_at: __, ...same } = old;
        return tx
          .insertInto('valve_reading')
          .values({ ...same, ...(reading === undefined ? {} : columnsOf(reading)), place: 0, ...columns })
          .returningAll()
          .executeTakeFirstOrThrow();
      },
    };
  });
}
