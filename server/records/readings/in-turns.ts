import { InputFaults } from '../../../shared/problems/faults.ts';
import type { Quantity } from '../../../shared/quantities/units.ts';
import { newReading } from '../../../shared/schemas/commands.ts';
import type { Entered } from '../../../shared/schemas/entered.ts';
import type { SaidInTurns } from '../../../shared/schemas/said-in-turns.ts';
import type { Principal } from '../../auth/principal.ts';
import type { Tx } from '../../database/database.ts';
import { getSetUp } from '../set-ups/set-ups.ts';

const { peak, zeroReturn, atLobeLift } = newReading.shape;
const SCHEMAS = { peak, zeroReturn, atLobeLift };
/** A part of a reading that may be said in turns. */
export type LengthName = keyof typeof SCHEMAS;
type Said = Entered | SaidInTurns;

/** What was said of a reading, each part a length or turns of the dial. */
type SaidLengths = { readonly [Each in LengthName]?: Said | undefined };

const isTurns = (said: Said | undefined): said is SaidInTurns => said !== undefined && 'inTurns' in said;

/** Turns as a length on a dial; undefined where they are none there. */
export function readOnDial(name: LengthName, typed: string, perTurn: Quantity): Entered | undefined {
  const read = SCHEMAS[name].safeParse({ typed, assume: 'in', perTurn });
  return read.success && read.data !== undefined && !isTurns(read.data) ? read.data : undefined;
}

/** A part of a reading as a length; turns that cannot be read are refused at their field. */
export function lengthOf(name: LengthName, said: Said, perTurn: Quantity | undefined): Entered {
  if (!isTurns(said)) return said;
  const read = SCHEMAS[name].safeParse({ typed: said.typed, assume: 'in', perTurn });
  if (read.success && read.data !== undefined && !isTurns(read.data)) return read.data;
  const detail = read.success
    ? 'counts turns, and the dial is not known: say the travel of its hand in one turn'
    : read.error.issues.map(({ message }) => message).join('; ');
  throw new InputFaults([{ pointer: `/${name}`, code: 'not-allowed', detail, received: said.typed }]);
}

/** Reads the parts of a reading; its set-up is asked for the dial only where turns were counted. */
export async function lengthReader(
  tx: Tx,
  principal: Principal,
  of: { readonly buildId: string; readonly setUpId: string },
  given: SaidLengths,
): Promise<(name: LengthName, said: Said) => Entered> {
  const turned = [given.peak, given.zeroReturn, given.atLobeLift].some(isTurns);
  const perTurn = turned ? (await getSetUp(tx, principal, of.buildId, of.setUpId)).method.perTurn : undefined;
  return (name, said) => lengthOf(name, said, perTurn);
}
