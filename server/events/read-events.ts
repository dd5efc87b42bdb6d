import type { z } from 'zod';
import type { RecordedEvent } from './build-events.ts';
import type { EventDefinition } from './define-events.ts';

type Kept = Pick<RecordedEvent, 'kind' | 'data'>;

/** Whether this is such an event, whatever is kept with it. */
export const isEvent = (event: Pick<RecordedEvent, 'kind'>, { name }: EventDefinition): boolean =>
  event.kind === name;

/** What is kept with an event, where it is such a one and its data can be read as such; nothing throws. */
export function dataOf<Data extends z.ZodObject>(
  event: Kept,
  definition: EventDefinition<string, Data>,
): z.output<Data> | undefined {
  if (!isEvent(event, definition)) return undefined;
  const read = definition.data.safeParse(event.data);
  return read.success ? read.data : undefined;
}

/** The events of one kind, oldest first, with their data typed; one that can't be read is left out. */
export function eventsOf<Event extends Kept, Data extends z.ZodObject>(
  events: readonly Event[],
  definition: EventDefinition<string, Data>,
): (Omit<Event, 'data'> & { readonly data: z.output<Data> })[] {
  return events.flatMap((event) => {
    const data = dataOf(event, definition);
    return data === undefined ? [] : [{ ...event, data }];
  });
}

/** Whether such an event is on the record. */
export const happened = (events: readonly Kept[], definition: EventDefinition): boolean =>
  events.some((event) => isEvent(event, definition));
