import { InputFaults } from '../../../shared/problems/faults.ts';

/** `pointer code` of every fault that a function of the mechanics ends with; none when it answers. */
export function faultsOf(run: () => unknown): string[] {
  try {
    run();
  } catch (error) {
    if (!(error instanceof InputFaults)) throw error;
    return error.faults.map(({ pointer, code }) => `${pointer} ${code}`);
  }
  return [];
}
