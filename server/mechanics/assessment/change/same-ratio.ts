import type { Headline } from '../assessment.ts';
import { sameRatio } from '../common/same-ratio.ts';
import type { ChangeDetail } from './detail.ts';
import { byPlan, placesSaid } from './groups.ts';

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

/** A plan that changes nothing is said to. */
export function sameRatioHeadlines(details: readonly ChangeDetail[]): Headline[] {
  return byPlan(details).flatMap(({ key, details: here }): Headline[] => {
    const same = here.filter(isSame);
    const [first] = same;
    if (first?.before === undefined || first.after === undefined) return [];
    const where = same.length === here.length ? '' : ` on ${placesSaid(same.map((detail) => ({ detail })))}`;
    return [
      {
        id: `headline:change:same-ratio${key}`,
        about: { of: 'build' },
        step: 'consequences',
        sentence: `With ${first.after.said} nothing changes${where}: it is ${first.before.said}. If another ratio is meant, or other arms are on, say which.`,
      },
    ];
  });
}
