import type { Quantity } from '../../../shared/quantities/units.ts';
import { siOf } from '../../../shared/schemas/entered.ts';
import { turnsIn } from '../../../shared/schemas/said-in-turns.ts';
import type { SetUp } from '../set-ups/set-ups.ts';
import { type LengthName, readOnDial } from './in-turns.ts';
import type { Reading } from './readings.ts';

/** What was typed, beside what it was read as. */
type Typed = Quantity & { readonly typed: string };

/** Figures of one text on one dial, apart by nothing that anybody reads [m]. */
const SAME = 1e-9;

/** Every dial that the set-up was ever said to have, the one that it has now last. */
const dialsOf = ({ started, statements }: SetUp): Quantity[] => [
  started.method.perTurn,
  ...statements.flatMap(({ said }) => said.method?.perTurn ?? []),
];

/**
 * A length that was typed in turns, on the dial as it is known now. One that came of no dial of its set-up was picked,
 * or had a dial of its own said with it, and stays.
 */
function again<Length extends Typed>(name: LengthName, length: Length, { method }: SetUp, dials: Quantity[]) {
  if (turnsIn(length.typed) === undefined) return length;
  const cameOf = dials.some((dial) => {
    const read = readOnDial(name, length.typed, dial);
    return read !== undefined && Math.abs(siOf(read) - siOf(length)) <= SAME;
  });
  const now = cameOf ? readOnDial(name, length.typed, method.perTurn) : undefined;
  return now ?? length;
}

/**
 * A reading whose set-up got another dial since it was kept: turns that were typed are read on that one, as if it had
 * been said with them. What was typed stays as it is.
 */
function onDial(reading: Reading, setUp: SetUp): Reading {
  const dials = dialsOf(setUp);
  if (dials.length < 2) return reading;
  const { peak, zeroReturn, atLobeLift } = reading;
  return {
    ...reading,
    peak: again('peak', peak, setUp, dials),
    zeroReturn: zeroReturn && again('zeroReturn', zeroReturn, setUp, dials),
    atLobeLift: atLobeLift && again('atLobeLift', atLobeLift, setUp, dials),
  };
}

/** Readings on the dial that each of their set-ups is known to have now. */
export const onTheirDials = (readings: readonly Reading[], setUps: readonly SetUp[]): Reading[] =>
  readings.map((reading) => {
    const setUp = setUps.find(({ id }) => id === reading.setUpId);
    return setUp === undefined ? reading : onDial(reading, setUp);
  });
