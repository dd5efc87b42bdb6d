import { InputFaults } from '../../../shared/problems/faults.ts';
import type { Quantity } from '../../../shared/quantities/units.ts';
import { CAN_BE } from '../../../shared/schemas/can-be.ts';
import { type Gauged, gauged } from '../../../shared/schemas/gauged.ts';
import type { SaidInTurns } from '../../../shared/schemas/said-in-turns.ts';
import type { Principal } from '../../auth/principal.ts';
import type { Tx } from '../../database/database.ts';
import { listSetUps, type SetUp } from '../set-ups/set-ups.ts';

const reading = gauged('the reading', CAN_BE.sheetReading, { asksLater: true });

const NO_DIAL =
  'counts turns, and the dial is not known: say the travel of its hand in one turn, or the reading as a length';

/** The dial that turns are counted on: of the newest set-up. */
export const newestDial = (setUps: readonly SetUp[]): Quantity | undefined =>
  setUps.findLast(({ struck }) => !struck)?.method.perTurn;

/** The same of a build, unless the sheet has a dial of its own. */
export async function dialOf(
  tx: Tx,
  principal: Principal,
  buildId: string,
  own: Quantity | undefined,
): Promise<Quantity | undefined> {
  return own ?? newestDial(await listSetUps(tx, principal, buildId));
}

/** A reading as a length. Turns are read on the dial; without one, and where they can be read two ways, they are asked. */
export function asLength(
  said: Gauged | SaidInTurns,
  perTurn: Quantity | undefined,
): { readonly ok: true; readonly reading: Gauged } | { readonly ok: false; readonly detail: string } {
  if (!('inTurns' in said)) return { ok: true, reading: said };
  if (perTurn === undefined) return { ok: false, detail: NO_DIAL };
  const { value, unit } = perTurn;
  const read = reading.safeParse({ typed: said.typed, assume: 'in', perTurn: { value, unit } });
  return read.success
    ? { ok: true, reading: read.data }
    : { ok: false, detail: read.error.issues.map(({ message }) => message).join('; ') };
}

interface WithReading {
  readonly reading: Gauged | SaidInTurns;
}

/** All of them as lengths, or each that cannot be read with its place in the list. */
export function allAsLengths<Given extends WithReading>(
  given: readonly Given[],
  perTurn: Quantity | undefined,
): (Omit<Given, 'reading'> & { readonly reading: Gauged })[] {
  const read = given.map((each) => ({ each, as: asLength(each.reading, perTurn) }));
  const faults = read.flatMap(({ each, as }, index) =>
    as.ok
      ? []
      : [
          {
            pointer: `/readings/${index}/reading`,
            code: 'not-allowed' as const,
            detail: as.detail,
            received: 'typed' in each.reading ? each.reading.typed : undefined,
          },
        ],
  );
  if (faults.length > 0) throw new InputFaults(faults);
  return read.flatMap(({ each, as }) => (as.ok ? [{ ...each, reading: as.reading }] : []));
}
