import type { Headline } from '../assessment.ts';
import { sameRatio } from '../common/same-ratio.ts';
import type { ChangeDetail } from './detail.ts';
import { byPlan, isFirstPlan, placesSaid } from './groups.ts';

/** The plan is what was there before: stated alike, since two arms that are measured always differ. */
const isSame = ({ plan, before, after }: ChangeDetail): boolean =>
  plan !== undefined &&
  before !== undefined &&
  before.from !== 'measured' &&
  after?.from === 'planned' &&
  sameRatio(before.value, plan);

/** With nothing planned, arms that are sold as what the card works with are no change either: which one is meant is asked. */
export function noChangeHeadlines(details: readonly ChangeDetail[]): Headline[] {
  const isNone = ({ plan, before, after }: ChangeDetail): boolean =>
    plan === undefined &&
    before?.from === 'card' &&
    after !== undefined &&
    after.from !== 'measured' &&
    sameRatio(before.value, after.value);
  const [first] = details;
  if (first?.before === undefined || first.after === undefined || !details.every(isNone)) return [];
  return [
    {
      id: 'headline:change:no-change',
      about: { of: 'build' },
      step: 'consequences',
      sentence: `Before and after are alike: ${first.after.said} is ${first.before.said}. Say which ratio is planned, or which was on before.`,
    },
  ];
}

/** The others that are to be fitted are of another ratio, and do change something. */
const isKept = (details: readonly ChangeDetail[], same: readonly ChangeDetail[]): boolean =>
  same.every(isFirstPlan) &&
  details.some((each) => isFirstPlan(each) && each.plan !== same[0]?.plan && !isSame(each));

/** A plan that changes nothing is said to. */
export function sameRatioHeadlines(details: readonly ChangeDetail[]): Headline[] {
  return byPlan(details).flatMap(({ key, details: here }): Headline[] => {
    const same = here.filter(isSame);
    const [first] = same;
    if (first?.before === undefined || first.after === undefined) return [];
    // What is kept on one side while the other is changed is meant so.
    const isOfAll = same.length === details.filter(isFirstPlan).length;
    const where = isOfAll ? '' : ` on ${placesSaid(same.map((detail) => ({ detail })))}`;
    const end = isKept(details, same) ? '' : ' If another ratio is meant, or other arms are on, say which.';
    return [
      {
        id: `headline:change:same-ratio${key}`,
        about: { of: 'build' },
        step: 'consequences',
        sentence: `With ${first.after.said} nothing changes${where}: it is ${first.before.said}.${end}`,
      },
    ];
  });
}
