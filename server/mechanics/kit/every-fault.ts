import { type InputFault, InputFaults } from '../../../shared/problems/faults.ts';

/**
 * Runs checks that have nothing to do with one another, so that an input with several impossible things in it is
 * told all of them at once.
 *
 * @param checks [1] each returns where nothing is wrong
 * @throws the faults of all the checks together
 */
export function everyFault(...checks: readonly (() => unknown)[]): void {
  const faults = checks.flatMap((check): readonly InputFault[] => {
    try {
      check();
      return [];
    } catch (error) {
      if (error instanceof InputFaults) return error.faults;
      throw error;
    }
  });
  if (faults.length > 0) throw new InputFaults(faults.slice(0, 100));
}
