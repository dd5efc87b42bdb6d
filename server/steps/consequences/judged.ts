import type { Assessment, Headline, Judgement } from '../../mechanics/assessment/assessment.ts';
import type { ChangeDetail } from '../../mechanics/assessment/change/detail.ts';
import { keyOf } from '../../mechanics/assessment/common/said.ts';

/** What is told of the gaps of a valve, worst first. */
export const judgementsOf = ({ judgements }: Assessment, { gaps }: ChangeDetail): Judgement[] =>
  gaps.flatMap(({ judgementId }) => judgements.find(({ id }) => id === judgementId) ?? []);

/** The answer in one line, of what is named: the whole build, a valve, a side. */
export const headlinesOn = ({ headlines }: Assessment, { about }: Pick<ChangeDetail, 'about'>): Headline[] =>
  headlines.filter((headline) => headline.step === 'consequences' && keyOf(headline.about) === keyOf(about));

const RANK = { short: 0, close: 1, clear: 2 } as const;
const rankOf = ({ gaps: [worst] }: ChangeDetail): number =>
  worst?.word === undefined ? 2 : RANK[worst.word];

/** The valves, those with the worst gap first; alike, in the engine's own numbering. */
export const worstFirst = ({ details }: Assessment): ChangeDetail[] =>
  details.change.toSorted((a, b) => rankOf(a) - rankOf(b));
