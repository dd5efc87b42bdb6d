import { InputFaults } from '../../../shared/problems/faults.ts';
import type { Quantity } from '../../../shared/quantities/units.ts';
import type { PasteSheet } from '../../../shared/schemas/sheet.ts';
import type { Principal } from '../../auth/principal.ts';
import type { Tx } from '../../database/database.ts';
import type { TurningCheck } from '../calls/stop-signs.ts';
import { stillStanding } from '../corrections/entries.ts';
import { type Pasted, type PastedReading, type PasteFault, readPasted } from './paste.ts';
import { dialOf } from './said-in-turns.ts';
import { keepSheetReadings, listSheetReadings } from './sheet-readings.ts';
import type { SheetReading } from './sheet-table.ts';

/** A pasted reading with what is on record of the same thing already. */
type LookedAt = PastedReading & { readonly already?: string };

export interface Look {
  readonly readings: readonly LookedAt[];
  readonly faults: readonly PasteFault[];
}

/** What the text would put on the sheet beside the readings that count now, and what is wrong with it. */
export function previewOf(
  input: Omit<PasteSheet, 'keep'>,
  standing: readonly SheetReading[],
  newest: Quantity | undefined,
): Look {
  const { readings, faults } = readPasted(input, input.perTurn ?? newest);
  return {
    faults,
    readings: readings.map((each) => {
      const same = standing.findLast(
        (one) =>
          one.cylinder === each.cylinder &&
          one.valve === each.valve &&
          one.kind === each.kind &&
          one.arms === input.arms &&
          (each.kind !== 'valve-lift' || one.spring === input.spring),
      );
      return same === undefined ? each : { ...each, already: same.reading.readAs };
    }),
  };
}

/** The same for a build; nothing is kept. */
export async function lookAtPasted(
  tx: Tx,
  principal: Principal,
  buildId: string,
  input: Omit<PasteSheet, 'keep'>,
): Promise<Look> {
  const dial = await dialOf(tx, principal, buildId, input.perTurn);
  return previewOf(input, stillStanding(await listSheetReadings(tx, principal, buildId)), dial);
}

export const sayFault = ({ line, column, detail }: PasteFault): string =>
  `line ${line}, ${column}: ${detail}`;

/** Keeps all that the text holds, or nothing where one cell can't be read. */
export async function keepPasted(
  tx: Tx,
  principal: Principal,
  buildId: string,
  input: Omit<PasteSheet, 'keep'>,
  refuseTurning: TurningCheck,
): Promise<{ readonly kept: SheetReading[] } | Pasted> {
  const { readings, faults } = readPasted(input, await dialOf(tx, principal, buildId, input.perTurn));
  if (faults.length > 0) return { readings, faults };
  const { text: _, unit: __, ...how } = input;
  const sheet = { ...how, readings: readings.map(({ line: ___, ...each }) => each) };
  const kept = await keepSheetReadings(tx, principal, buildId, sheet, refuseTurning);
  return { kept };
}

/** The faults of a text as those of one field of the input. */
export const textFaults = (faults: readonly PasteFault[]): InputFaults =>
  new InputFaults(
    faults.map((fault) => ({
      pointer: '/text',
      code: 'not-allowed',
      detail: sayFault(fault),
      received: fault.received,
    })),
  );
