import type { CallContext } from './context.ts';
import type { Need } from './step.ts';

/** The answer of the call waits for it. */
export const must = (text: string, have: boolean): Need => ({ text, have, must: true });
/** Asked for, and the answer can be given without it. */
export const also = (text: string, have: boolean): Need => ({ text, have, must: false });

/** The answer waits for what a step asks where the plan of the call's goal says so. */
export const mustFor = (context: CallContext, step: string) =>
  context.plan.waitsFor.includes(step) ? must : also;

/** Whether a computation was kept with the build. */
export const hasWorking = (context: CallContext, computation: string): boolean =>
  context.events.some(
    (event) => event.kind === 'working-kept' && Reflect.get(event.data, 'computation') === computation,
  );

/** Whether the log has an event of a kind. */
export const hasEvent = ({ events }: CallContext, kind: string): boolean =>
  events.some((event) => event.kind === kind);
