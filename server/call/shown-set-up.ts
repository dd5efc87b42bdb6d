import type { SetUpDetail } from '../mechanics/assessment/ratio/read/detail.ts';
import type { Reading } from '../records/readings/readings.ts';
import type { SetUp } from '../records/set-ups/set-ups.ts';
import type { CallContext } from './context.ts';

/** A set-up as it was entered, every pass of it, and its figures as the assessment has them. */
export interface ShownSetUp {
  readonly setUp: SetUp;
  readonly readings: readonly Reading[];
  readonly detail: SetUpDetail;
}

/** Every set-up of the build, by its number. */
export const shownSetUps = ({ setUps, readings, assessment }: CallContext): ShownSetUp[] =>
  assessment.details.setUps.flatMap((detail) => {
    const setUp = setUps.find(({ id }) => id === detail.setUp.id);
    return setUp === undefined
      ? []
      : [{ setUp, detail, readings: readings.filter(({ setUpId }) => setUpId === setUp.id) }];
  });

/** The passes that the ratio of a set-up is calculated from, in the order of entry. */
export function ratioRestsOn({ readings, assessment }: CallContext, { detail }: ShownSetUp): Reading[] {
  const ids = assessment.quantities.find(({ id }) => id === detail.quantityId)?.restsOn ?? [];
  return readings.filter(({ id }) => ids.includes(id)).sort((a, b) => a.seq - b.seq);
}
