import { encoded } from '../../compute/encode.ts';
import { computation as explainReadings } from '../../mechanics/computations/explain-readings.ts';
import type { BuildRecord } from '../../records/whole-build/build-record.ts';
import { explanationInput } from './explanation-input.ts';

export type Explained = ReturnType<typeof explainReadings.compute>;

/** What would explain the readings of a set-up's valve, and the next reading worth taking. */
export function explainSetUp(record: BuildRecord, setUpId: string): Explained | undefined {
  const input = explanationInput(record, setUpId);
  return input === undefined ? undefined : explainReadings.compute(input);
}

export const explanationView = explainReadings.output;
export const showExplanation = (explained: Explained) => encoded(explanationView, explained, 'inch');
