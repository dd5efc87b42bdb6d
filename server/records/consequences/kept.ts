import type { RecordedEvent } from '../../events/build-events.ts';
import type { DataOf } from '../../events/define-events.ts';
import { eventsOf } from '../../events/read-events.ts';
import { CONSEQUENCE_EVENTS } from './events.ts';

type Kept = Pick<RecordedEvent, 'seq' | 'by' | 'at'> & {
  readonly data: DataOf<(typeof CONSEQUENCE_EVENTS)['consequences-kept']>;
  /** Why it was struck out. */
  readonly struck?: string;
};

/** What a ratio does, each time that it was kept, with what was struck out. */
export function keptConsequences(events: readonly RecordedEvent[]): Kept[] {
  const struck = new Map(
    eventsOf(events, CONSEQUENCE_EVENTS['consequences-struck']).map(({ data }) => [data.line, data.reason]),
  );
  return eventsOf(events, CONSEQUENCE_EVENTS['consequences-kept']).map(({ seq, by, at, data }) => {
    const reason = struck.get(seq);
    return { seq, by, at, data, ...(reason === undefined ? {} : { struck: reason }) };
  });
}
