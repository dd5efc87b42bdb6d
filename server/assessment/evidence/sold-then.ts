import { defined } from '../../../shared/defined.ts';
import { eventsOf } from '../../events/read-events.ts';
import { BUILD_EVENTS } from '../../records/builds/events.ts';
import { specAt } from '../../records/builds/revisions.ts';
import type { BuildRecord } from '../../records/whole-build/build-record.ts';

/** What the rockers were sold as when an entry was made, where they are sold as another ratio now. */
export function soldAsThen({ build, revisions, events }: BuildRecord): (line: number) => {
  readonly soldAsThen?: number;
} {
  const revised = eventsOf(events, BUILD_EVENTS['build-revised']);
  const now = build.spec.rockers?.nominalRatio;
  return (line) => {
    const later = revised.filter(({ seq }) => seq > line).map(({ data }) => data.revision);
    if (later.length === 0) return {};
    const then = specAt(revisions, Math.min(...later) - 1).rockers?.nominalRatio;
    return then === now ? {} : defined({ soldAsThen: then });
  };
}
