import { PART_FEATURES, PART_SIZES } from '../../../shared/schemas/part-words.ts';
import type { Component } from '../../../views/parts/components.ts';
import type { CallContext } from '../../call/context.ts';
import type { RankingDetail } from '../../mechanics/assessment/part/detail.ts';
import { noticeComponent } from '../../web/components.ts';
import type { AskedKind } from './asked-now.ts';
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

/**
 * The same beside what is asked now, so that the page has one thing to do next: nothing of another size while the call
 * waits for this one, and a way to it only from a size that was picked. The ratio on the engine is no way while nobody
 * may turn it.
 */
export function tellComponents(
  { base, assessment }: CallContext,
  seen: PartSeen,
  ranking: RankingDetail,
  asked: { readonly kind: AskedKind; readonly picked: boolean },
): Component[] {
  const { kind } = ranking.tell;
  const text = tellText(ranking);
  if (kind === asked.kind) return [noticeComponent(text)];
  if (kind !== undefined)
    return asked.picked
      ? [
          noticeComponent(text, {
            link: { href: partAddress(base, seen, kind), label: `Measure ${NAMES[kind].toLowerCase()}` },
          }),
        ]
      : [];
  const elsewhere = assessment.next?.step === 'ratio' && assessment.stop.length === 0;
  return [
    noticeComponent(
      text,
      elsewhere ? { link: { href: `${base}/steps/ratio`, label: 'Read the ratio' } } : {},
    ),
  ];
}
