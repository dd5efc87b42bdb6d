import type { Law } from './law.ts';

/** Law 8: a planned part is judged as planned, also while nothing is measured. */
export const plannedIsJudgedAsPlanned: Law = ({ evidence, assessment }) => {
  const { planned, plannedExhaust, alsoPlanned = [] } = evidence.rockers;
  if (planned === undefined) return [];
  const plans = [planned, ...(plannedExhaust === undefined ? [] : [plannedExhaust]), ...alsoPlanned];
  const { change } = assessment.details;
  const isPlanned = (ratio: number) => plans.some((plan) => Math.abs(ratio / plan - 1) < 0.12);
  return [
    ...change.flatMap(({ id, after }) => {
      if (after === undefined) return [`${id}: nothing after the change, though ${planned} is planned`];
      if (after.from === 'planned')
        return plans.includes(after.value)
          ? []
          : [`${id}: planned ${plans.join()}, calculated with ${after.value}`];
      return after.from === 'measured' ? [] : [`${id}: after the change is ${after.said}`];
    }),
    ...plans
      .filter((plan) => change.length > 0 && !change.some((each) => each.plan === plan))
      .map((plan) => `the planned ${plan} is not told`),
    ...change
      .filter(
        ({ after }) => after?.from === 'measured' && after.lacks.length === 0 && !isPlanned(after.value),
      )
      .map(({ id, after }) => `${id}: ${after?.value} measured stands for the planned ${planned}`)
      .filter(() => evidence.arms.length === 0),
    ...assessment.judgements.flatMap(({ id, against }) =>
      against.to === 'planned' && against.ratio !== planned
        ? [`${id}: judged against another ratio than the planned`]
        : [],
    ),
  ];
};
