import { type InputFault, InputFaults } from '../../shared/problems/faults.ts';
import type { UnitSystem } from '../../shared/quantities/units.ts';
import { type Answer, loadComputations } from '../compute/registry.ts';
import { type Refusal, readBytes } from './unread-body.ts';

/** What is to be computed, as it goes from thread to thread: a body, or the bytes of one that nobody has read yet. */
export type ComputeTask = { readonly name: string; readonly system: UnitSystem; readonly of?: 'engine' } & (
  | { readonly body: unknown }
  | { readonly bytes: Uint8Array }
);

type Outcome =
  | { readonly answer: Answer }
  | { readonly faults: readonly InputFault[] }
  | { readonly refusal: Refusal };

/** Its answer or what is wrong, and how long the thread worked on it, in milliseconds. */
export type ComputeDone = Outcome & { readonly ms: number };

const computations = await loadComputations();

function outcomeOf(task: ComputeTask): Outcome {
  const each = computations.get(task.name);
  if (each === undefined) throw new Error(`no computation ${task.name}`);
  try {
    const read = 'bytes' in task ? readBytes(task.bytes) : task;
    return 'refusal' in read ? read : { answer: each.run(read.body, task.system, task.of) };
  } catch (error) {
    // A class does not cross between threads: what it says does.
    if (error instanceof InputFaults) return { faults: error.faults };
    throw error;
  }
}

/** Runs one computation on this thread. */
export function computeHere(task: ComputeTask): ComputeDone {
  const begun = performance.now();
  const outcome = outcomeOf(task);
  return { ...outcome, ms: performance.now() - begun };
}
