import { defined } from '../../../../shared/defined.ts';
import { EQUAL } from '../../kit/nearest.ts';
import { overSaid } from '../../tip-mark/length-said.ts';
import type { AssessedQuantity, Headline, Judgement } from '../assessment.ts';
import { gapSaid } from '../common/gap-said.ts';
import { inches, keyOf, listed, placeOf, valveSubject } from '../common/said.ts';
import type { LimitEvidence, TipMarkEvidence } from '../evidence.ts';
import type { LeastSweepDetail, MarkedValveDetail } from './detail.ts';

/** What the mark is against the least sweep; an ink mark holds the contact line's own width, so wide is only asked. */
export function markJudgement(
  { cylinder, valve, marks, judgedId, least, lookAgainOver, alone, follower }: MarkedValveDetail,
  limit: LimitEvidence,
): Judgement[] {
  const mark = marks.find(({ id }) => id === judgedId);
  if (mark === undefined) return [];
  const about = valveSubject({ cylinder, valve });
  const said = markSaid(mark, { several: marks.length > 1, follower });
  const against = { to: 'least-sweep', limit: lookAgainOver ?? limit.value, source: limit.source } as const;
  const base = { id: `mark:${keyOf(about)}`, about, against, restsOn: [mark.id, ...least.restsOn].sort() };
  if (least.value === undefined || lookAgainOver === undefined)
    return [
      {
        ...base,
        sentence: `${said}: no word yet on its width. It needs ${listed(least.lacks)}.`,
        lacks: least.lacks,
      },
    ];
  const read = wordOf(mark, least, lookAgainOver);
  // Ink holds the contact line’s own width: it takes a second mark to call one wide.
  const isAlone = read === 'differs' && alone;
  const word = isAlone ? 'cannot-tell' : read;
  const band = isAlone ? ALONE : BAND[read];
  const sweep = gapSaid(defined({ value: least.value, low: least.low, high: least.high }));
  return [
    {
      ...base,
      word,
      sentence: `${said}. ${band} ${inches(lookAgainOver)}; the least this lift can sweep is ${sweep}.`,
      lacks: isAlone ? ['a second mark on that valve'] : [],
    },
  ];
}

type MarkWord = 'differs' | 'cannot-tell' | 'agrees';

const BAND: Readonly<Record<MarkWord, string>> = {
  differs: 'Wide: over the ordinary',
  'cannot-tell': 'Too narrow to be all of it: ordinary is up to',
  agrees: 'Ordinary: that is up to',
};

const ALONE = 'One mark alone can’t be called wide; ordinary is up to';

const wordOf = ({ width }: TipMarkEvidence, { low, value = 0 }: LeastSweepDetail, most: number): MarkWord =>
  width > most + EQUAL ? 'differs' : width < (low ?? value) ? 'cannot-tell' : 'agrees';

/** Where it sits, as far as that was told. */
function placeSaid({ side, off }: TipMarkEvidence, follower: boolean): string {
  if (side === 'centred') return 'centred';
  const by = off === undefined ? '' : `${inches(off)} `;
  if (side === 'sideways') return `${by}off sideways`;
  if (follower) return `${by}${side === 'valley' ? 'toward' : 'away from'} the pivot`;
  return `${by}toward the ${side === 'valley' ? 'valley' : 'exhaust side'}`;
}

/** Of several marks the one that is told is known by what it was made with. */
function markSaid(
  mark: TipMarkEvidence,
  { several, follower }: { readonly several: boolean; readonly follower: boolean },
): string {
  const { pushrod, shims } = mark;
  const made =
    pushrod !== undefined
      ? ` at ${inches(pushrod)}${overSaid(mark.pushrodOver)}`
      : shims === undefined
        ? ''
        : ` at ${inches(shims)} of shims`;
  return `Tip mark of ${placeOf(mark)}${several ? made : ''}: ${inches(mark.width)} wide, ${placeSaid(mark, follower)}`;
}

/** What the mark is, and what follows from it. */
export function markHeadline(valve: MarkedValveDetail, limit: LimitEvidence): Headline[] {
  return markJudgement(valve, limit).map(({ id, about, sentence }) => ({
    id: `headline:${id}`,
    about,
    step: 'geometry',
    sentence: valve.inShort === undefined ? sentence : `${sentence} ${valve.inShort.said}`,
    judgementId: id,
  }));
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
