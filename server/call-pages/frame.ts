import { defined } from '../../shared/defined.ts';
import type { StepName } from '../../shared/steps.ts';
import type { CallContext } from '../call/context.ts';
import type { OpenStep, Step, StepSource } from '../call/step.ts';
import type { Tells } from '../call/tell-events.ts';

/** The steps of a call, as the frame around them sees them: alike, and by name. */
export interface CallFrame {
  readonly steps: readonly Step[];
  /** What the tape says of each event, by its name. */
  readonly told: Tells;
}

export const stepNamed = ({ steps }: CallFrame, name: string): Step | undefined =>
  steps.find((step) => step.name === name);

/** What a step is called in lists and links. */
export const linkOf = (frame: CallFrame, name: StepName): string =>
  stepNamed(frame, name)?.words.link ?? name;

/** Why a step does not apply to the engine of this call; undefined where it does. */
export const notForThisEngine = ({ assessment }: CallContext, name: string): string | undefined =>
  assessment.details.gear.steps.find(({ step }) => step === name)?.why;

/** The steps that this engine has a use for. */
export const stepsFor = ({ steps }: CallFrame, context: CallContext): readonly Step[] =>
  steps.filter(({ name }) => notForThisEngine(context, name) === undefined);

/** The step before and the one after. */
export function besides(
  frame: CallFrame,
  context: CallContext,
  name: string,
): { before?: Step; after?: Step } {
  const steps = frame.steps.filter(
    (step) => step.name === name || notForThisEngine(context, step.name) === undefined,
  );
  const at = steps.findIndex((step) => step.name === name);
  const [before, after] = [steps[at - 1], steps[at + 1]];
  return { ...defined({ before, after }) };
}

/** Every step with what it loads, for the sheets that tell a call from beginning to end. */
export function openSteps({ steps }: CallFrame, source: StepSource): ReadonlyMap<string, OpenStep> {
  return new Map(steps.map((step) => [step.name, step.open(source)]));
}

/** Pages beside the steps stand at one of the two ends: stopping at the first, what is said and shared at the last. */
export const firstStep = ({ steps }: CallFrame): string => steps[0]?.name ?? '';
export const lastStep = ({ steps }: CallFrame): string => steps.at(-1)?.name ?? '';
