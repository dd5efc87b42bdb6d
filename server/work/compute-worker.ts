import { type InputFault, InputFaults } from '../../shared/problems/faults.ts';
import type { UnitSystem } from '../../shared/quantities/units.ts';
import { type Answer, loadComputations } from '../compute/registry.ts';

/** What is to be computed, as it goes from thread to thread. */
export interface ComputeTask {
  readonly name: string;
  readonly body: unknown;
  readonly system: UnitSystem;
}

/** Its answer or its faults, and how long the thread worked on it, in milliseconds. */
export type ComputeDone = { readonly ms: number } & (
  | { readonly answer: Answer }
  | { readonly faults: readonly InputFault[] }
);

const computations = await loadComputations();

function outcome(run: () => Answer): { answer: Answer } | { faults: readonly InputFault[] } {
  try {
    return { answer: run() };
  } catch (error) {
    // A class does not cross between threads: what it says does.
    if (error instanceof InputFaults) return { faults: error.faults };
    throw error;
  }
}

/** Runs one computation on this thread. */
export function computeHere({ name, body, system }: ComputeTask): ComputeDone {
  const each = computations.get(name);
  if (each === undefined) throw new Error(`no computation ${name}`);
  const begun = performance.now();
  const found = outcome(() => each.run(body, system));
  return { ...found, ms: performance.now() - begun };
}
