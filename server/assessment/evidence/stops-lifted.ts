import { defined } from '../../../shared/defined.ts';
import type { Evidence } from '../../mechanics/assessment/evidence.ts';

type Lifted = NonNullable<Evidence['call']['stopsLifted']>[number];

/** A stop that had one name for all sums, before each sum had a stop of its own. */
const ONCE_FOR_ALL = 'stop:plunger-bottomed';

/** A stop as it was lifted, by the name that it has now: what a person lifted stays lifted. */
export const asNamedNow = ({
  stopId,
  entryId,
}: {
  readonly stopId: string;
  readonly entryId?: string | undefined;
}): Lifted => ({
  stopId: stopId === ONCE_FOR_ALL && entryId !== undefined ? `${ONCE_FOR_ALL}:${entryId}` : stopId,
  ...defined({ entryId }),
});
