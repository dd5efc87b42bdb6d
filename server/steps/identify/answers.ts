import { PART_FEATURES, PART_SIZES } from '../../../shared/schemas/part-words.ts';
import type { Component } from '../../../views/parts/components.ts';
import type { CallContext } from '../../call/context.ts';
import type { RankingDetail } from '../../mechanics/assessment/part/detail.ts';
import { noticeComponent } from '../../web/components.ts';
import { basisText, rankedLines } from './candidate-text.ts';
import { type PartSeen, partAddress } from './of-part.ts';

const NAMES = { ...PART_SIZES, ...PART_FEATURES };

export function candidatesComponent(context: CallContext, ranking: RankingDetail): Component {
  const { lines, others, note } = rankedLines(ranking, context.side === 'desk');
  return {
    template: '/parts/candidates',
    data: {
      id: 'candidates',
      title: 'What it may be',
      intro: basisText(ranking),
      candidates: lines,
      note: `${others}${note}`,
    },
  };
}

/** What would tell most of the part, with what the catalogue has for the two that stand first. */
export const tellText = ({ tell: { sentence, parted } }: RankingDetail): string =>
  parted === '' ? sentence : `${sentence} ${parted}`;

/** The same with the way to it; the ratio on the engine is no way while nobody may turn it. */
export function tellComponent(
  { base, assessment }: CallContext,
  seen: PartSeen,
  ranking: RankingDetail,
): Component {
  const { kind } = ranking.tell;
  const text = tellText(ranking);
  if (kind !== undefined)
    return noticeComponent(text, {
      link: { href: partAddress(base, seen, kind), label: `Measure ${NAMES[kind].toLowerCase()}` },
    });
  if (assessment.stop.length > 0) return noticeComponent(text);
  return noticeComponent(text, { link: { href: `${base}/steps/ratio`, label: 'Read the ratio' } });
}
