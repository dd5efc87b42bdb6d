import { defined } from '../../../shared/defined.ts';
import type { BuildSpec } from '../../../shared/schemas/build-spec.ts';
import { eventsOf } from '../../events/read-events.ts';
import { BUILD_EVENTS } from '../../records/builds/events.ts';
import { specAt } from '../../records/builds/revisions.ts';
import type { BuildRecord } from '../../records/whole-build/build-record.ts';
import { familyNamed } from './family-named.ts';

/** What the rockers were sold as when an entry was made, said of them or by their family, where it is another ratio now. */
export function soldAsThen(record: BuildRecord): (line: number) => {
  readonly soldAsThen?: number;
} {
  const { build, revisions, events } = record;
  const soldAs = (spec: BuildSpec): number | undefined =>
    spec.rockers?.nominalRatio ?? familyNamed(spec, record).family?.nominalRatio;
  const revised = eventsOf(events, BUILD_EVENTS['build-revised']);
  const now = soldAs(build.spec);
  return (line) => {
    const later = revised.filter(({ seq }) => seq > line).map(({ data }) => data.revision);
    if (later.length === 0) return {};
    const then = soldAs(specAt(revisions, Math.min(...later) - 1));
    return then === now ? {} : defined({ soldAsThen: then });
  };
}
