import { InputFaults } from '../../../shared/problems/faults.ts';
import { type Explained, explainSetUp } from '../../assessment/ratio/explain.ts';
import type { StepSource } from '../../call/step.ts';

/** What would explain the readings, by set-up. */
export type Explanations = ReadonlyMap<string, Explained>;

export function loadExplanations({ context: { record } }: StepSource): Explanations {
  const found = new Map<string, Explained>();
  for (const { id } of record.setUps) {
    try {
      const explained = explainSetUp(record, id);
      if (explained !== undefined) found.set(id, explained);
    } catch (error) {
      // Readings that the inference can't take are shown all the same, without it.
      if (!(error instanceof InputFaults)) throw error;
    }
  }
  return found;
}
