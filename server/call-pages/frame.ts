import type { CallContext } from '../call/context.ts';
import type { Need, OpenStep, Step, StepSource } from '../call/step.ts';
import type { Tells } from '../call/tell-events.ts';

/** The steps of a call, as the frame around them sees them: alike, and by name. */
export interface CallFrame {
  readonly steps: readonly Step[];
  /** Names of steps in the order in which what the answer waits for is asked. */
  readonly asked: readonly string[];
  /** What the tape says of each event, by its name. */
  readonly told: Tells;
}

export const stepNamed = ({ steps }: CallFrame, name: string): Step | undefined =>
  steps.find((step) => step.name === name);

/** The step before and the one after. */
export function besides({ steps }: CallFrame, name: string): { before?: Step; after?: Step } {
  const at = steps.findIndex((step) => step.name === name);
  const [before, after] = [steps[at - 1], steps[at + 1]];
  return { ...(before === undefined ? {} : { before }), ...(after === undefined ? {} : { after }) };
}

const ENDED = /[.?]$/;

/** The step that is next: the first with something that the answer waits for; with nothing left, the last. */
export function nextStep(frame: CallFrame, context: CallContext): { step: Step; why: string } {
  const { own } = context.plan;
  const [first = '', ...rest] = frame.asked;
  const order = own === undefined ? frame.asked : [first, own, ...rest];
  for (const name of order) {
    const step = stepNamed(frame, name);
    // What the caller rang for is asked for whole; of the other steps only what the answer waits for.
    const lacking = step?.needs(context).find((need) => (need.must || name === own) && !need.have);
    if (step !== undefined && lacking !== undefined)
      return { step, why: `Still open: ${lacking.text}${ENDED.test(lacking.text) ? '' : '.'}` };
  }
  const last = frame.steps.at(-1);
  if (last === undefined) throw new Error('a call has no steps');
  return { step: last, why: 'Everything that was asked for is there.' };
}

export interface Lack extends Need {
  readonly step: Step;
}

/** What is still missing for the goal: all of its own steps, and what the answer waits for elsewhere. */
export function lacksOf({ steps }: CallFrame, context: CallContext): Lack[] {
  // What the last step lacks is said and promised, not read on the engine.
  return steps.slice(0, -1).flatMap((step) =>
    step
      .needs(context)
      .filter((need) => !need.have && (need.must || context.plan.about.includes(step.name)))
      .map((need) => ({ ...need, step })),
  );
}

/** Every step with what it loads, for the sheets that tell a call from beginning to end. */
export function openSteps({ steps }: CallFrame, source: StepSource): ReadonlyMap<string, OpenStep> {
  return new Map(steps.map((step) => [step.name, step.open(source)]));
}

/** Pages beside the steps stand at one of the two ends: stopping at the first, what is said and shared at the last. */
export const firstStep = ({ steps }: CallFrame): string => steps[0]?.name ?? '';
export const lastStep = ({ steps }: CallFrame): string => steps.at(-1)?.name ?? '';
