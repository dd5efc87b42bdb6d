import type { Principal } from '../../auth/principal.ts';
import { encoderFor } from '../../compute/encode.ts';
import type { Tx } from '../../database/database.ts';
import { computation as explainReadings } from '../../mechanics/computations/explain-readings.ts';
import { explanationInput } from './explanation-input.ts';

export type Explained = ReturnType<typeof explainReadings.compute>;

/** What would explain the readings of a set-up's valve, and the next reading worth taking. */
export async function explainSetUp(
  tx: Tx,
  principal: Principal,
  buildId: string,
  setUpId: string,
): Promise<Explained | undefined> {
  const input = await explanationInput(tx, principal, buildId, setUpId);
  return input === undefined ? undefined : explainReadings.compute(input);
}

export const explanationView = explainReadings.output;
const encode = encoderFor(explanationView);
export const showExplanation = (explained: Explained): unknown => encode(explained, 'inch');
