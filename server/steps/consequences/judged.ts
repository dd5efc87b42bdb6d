import type { Assessment, Headline, Judgement } from '../../mechanics/assessment/assessment.ts';
import type { ChangeDetail } from '../../mechanics/assessment/change/detail.ts';
import { keyOf, nominalSaid, subjectSaid } from '../../mechanics/assessment/common/said.ts';

/** What is told of the gaps of a valve, worst first. */
export const judgementsOf = ({ judgements }: Assessment, { gaps }: ChangeDetail): Judgement[] =>
  gaps.flatMap(({ judgementId }) => judgements.find(({ id }) => id === judgementId) ?? []);

/** The answer in one line for each plan, then what is not known. */
export const changeHeadlines = ({ headlines }: Assessment): Headline[] =>
  headlines.filter(({ step }) => step === 'consequences');

/** `1 intake`; of several plans with the one it is: `1 intake, planned 1.7` */
export function titleOf({ about, plan }: ChangeDetail, { details }: Assessment): string {
  const several = details.change.some((other) => other.plan !== plan);
  return `${subjectSaid(about)}${several && plan !== undefined ? `, planned ${nominalSaid(plan)}` : ''}`;
}

const RANK = { short: 0, close: 1, clear: 2 } as const;
const rankOf = ({ gaps: [worst] }: ChangeDetail): number =>
  worst?.word === undefined ? 2 : RANK[worst.word];

/** The valves that the first headline is made of. */
function isNamed(assessment: Assessment): (detail: ChangeDetail) => boolean {
  const [first] = changeHeadlines(assessment);
  return ({ gaps, about }) =>
    first !== undefined &&
    (gaps.some(({ judgementId }) => judgementId !== undefined && judgementId === first.judgementId) ||
      (about.of !== 'build' && keyOf(about) === keyOf(first.about)));
}

/** The valves, the one that the headline names first, then those with the worst gap; alike, in the engine's own numbering. */
export function worstFirst(assessment: Assessment): ChangeDetail[] {
  const named = isNamed(assessment);
  return assessment.details.change.toSorted(
    (a, b) => Number(named(b)) - Number(named(a)) || rankOf(a) - rankOf(b),
  );
}
