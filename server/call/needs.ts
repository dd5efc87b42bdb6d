import type { EventDefinition } from '../events/define-events.ts';
import { eventsOf, happened } from '../events/read-events.ts';
import { WORKING_EVENTS } from '../records/workings/events.ts';
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
export const hasWorking = ({ events }: CallContext, computation: string): boolean =>
  eventsOf(events, WORKING_EVENTS['working-kept']).some(({ data }) => data.computation === computation);

/** Whether such an event is in the log. */
export const hasEvent = ({ events }: CallContext, event: EventDefinition): boolean => happened(events, event);
