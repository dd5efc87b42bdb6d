import { defined } from '../../../../shared/defined.ts';
import { IN } from '../../kit/si.ts';
import type { AssessedQuantity, Judgement } from '../assessment.ts';
import { gapSaid } from '../common/gap-said.ts';
import { inches, keyOf, listed, placeOf, valveSubject } from '../common/said.ts';
import type { LimitEvidence } from '../evidence.ts';
import type { MarkedValveDetail } from './detail.ts';

/** What the mark is against the least sweep; an ink mark holds the contact line's own width, so wide is only asked. */
export function markJudgement(
  { cylinder, valve, marks, judgedId, least, lookAgainOver }: MarkedValveDetail,
  limit: LimitEvidence,
): Judgement[] {
  const mark = marks.find(({ id }) => id === judgedId);
  if (mark === undefined) return [];
  const about = valveSubject({ cylinder, valve });
  const said = `Tip mark of ${placeOf(mark)}, ${inches(mark.width)} wide`;
  const against = { to: 'least-sweep', limit: lookAgainOver ?? limit.value, source: limit.source } as const;
  const base = { id: `mark:${keyOf(about)}`, about, against, restsOn: [mark.id, ...least.restsOn].sort() };
  if (least.value === undefined || lookAgainOver === undefined)
    return [
      {
        ...base,
        sentence: `${said}: no word yet. It needs ${listed(least.lacks)}.`,
        lacks: least.lacks,
      },
    ];
  const over = mark.width > lookAgainOver + 1e-9 * IN;
  return [
    {
      ...base,
      word: over ? 'differs' : mark.width < (least.low ?? least.value) ? 'cannot-tell' : 'agrees',
      sentence: `${said}: the least this lift can sweep is ${gapSaid({ value: least.value, ...(least.low && { low: least.low }), ...(least.high && { high: least.high }) })}, and up to ${inches(lookAgainOver)} is ordinary.`,
      lacks: [],
    },
  ];
}

export function sweepQuantity({ cylinder, valve, least }: MarkedValveDetail): AssessedQuantity[] {
  const about = valveSubject({ cylinder, valve });
  const { value, low, high, from, lacks, restsOn } = least;
  return [
    {
      id: `mark:least-sweep:${keyOf(about)}`,
      name: 'Least sweep across the stem',
      about,
      dimension: 'length',
      ...defined({ value, low, high }),
      basis: 'calculated',
      conditions: from,
      lacks,
      restsOn,
    },
  ];
}
