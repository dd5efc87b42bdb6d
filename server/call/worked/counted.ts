import { isObject } from '../../../shared/member.ts';
import { InputFaults } from '../../../shared/problems/faults.ts';
import { fromSi } from '../../../shared/quantities/units.ts';
import type { Registered } from '../../compute/registry.ts';
import type { Working } from '../../records/workings/workings.ts';
import type { CallContext } from '../context.ts';

/** The same readings with the pointer's error as it counts, computed as they were. */
function withPointer(working: Working, each: Registered | undefined, pointerOff: number): Working {
  if (each === undefined || !isObject(working.inputs)) return working;
  const inputs = { ...working.inputs, pointerOff: fromSi(pointerOff, 'deg') };
  try {
    return { ...working, inputs, answer: each.run(inputs, 'inch', 'engine') };
  } catch (error) {
    // An error that puts the peak where no lobe has it is nothing to draw: the assessment says so in words.
    if (error instanceof InputFaults) return working;
    throw error;
  }
}

/**
 * Kept computations as the assessment counts them: where an answer has told what was the matter with what was read, figure,
 * table and drawing are of what it comes to then.
 */
export function countedWorkings(
  { assessment, workings }: Pick<CallContext, 'assessment' | 'workings'>,
  computations: ReadonlyMap<string, Registered>,
): readonly Working[] {
  const counted = new Map(
    assessment.details.timing.counted.map(({ entryId, pointerOff }) => [entryId, pointerOff]),
  );
  return workings.map((working) => {
    const pointerOff = counted.get(working.id);
    return pointerOff === undefined
      ? working
      : withPointer(working, computations.get(working.computation), pointerOff);
  });
}
