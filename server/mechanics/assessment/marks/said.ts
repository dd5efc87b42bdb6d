import { defined } from '../../../../shared/defined.ts';
import { EQUAL } from '../../kit/nearest.ts';
import { overSaid } from '../../tip-mark/length-said.ts';
import type { AssessedQuantity, Headline, Judgement } from '../assessment.ts';
import { gapSaid } from '../common/gap-said.ts';
import { type Lack, toRead } from '../common/lack.ts';
import { inches, keyOf, listed, placeOf, valveSubject } from '../common/said.ts';
import type { LimitEvidence, TipMarkEvidence } from '../evidence.ts';
import type { LeastSweepDetail, MarkedValveDetail } from './detail.ts';
import { placeSaid } from './place-said.ts';

const NEEDS_AGAIN = toRead('another-mark', 'a mark that is inked once more');
const NEEDS_LIKE = toRead(
  'another-mark',
  'a second mark made in the same way, of that valve or of a neighbour',
);
const NEEDS_NARROWER = toRead('another-mark', 'a narrower mark made in the same way');

/** What the id of the judgement of a valve’s marks is. */
export const markId = (valve: Pick<MarkedValveDetail, 'cylinder' | 'valve'>): string =>
  `mark:${keyOf(valveSubject(valve))}`;

/** The other mark that a word on these waits for; nothing where another one tells nothing. */
export function wantsMark(valve: MarkedValveDetail): Lack | undefined {
  const { marks, judgedId, least, lookAgainOver, holds, wideBy, alone } = valve;
  const mark = marks.find(({ id }) => id === judgedId);
  if (!holds) return NEEDS_AGAIN;
  if (mark === undefined || least.value === undefined || lookAgainOver === undefined) return undefined;
  if (wordOf(mark, least, lookAgainOver) !== 'differs' || wideBy !== undefined) return undefined;
  return alone ? NEEDS_LIKE : NEEDS_NARROWER;
}

/** What the mark is against the least sweep; an ink mark holds the contact line's own width, so wide is only asked. */
export function markJudgement(valve: MarkedValveDetail, limit: LimitEvidence): Judgement[] {
  const { marks, judgedId, least, lookAgainOver, holds } = valve;
  const mark = marks.find(({ id }) => id === judgedId);
  if (mark === undefined) return [];
  const about = valveSubject(valve);
  const against = { to: 'least-sweep', limit: lookAgainOver ?? limit.value, source: limit.source } as const;
  const base = { id: markId(valve), about, against, restsOn: [mark.id, ...least.restsOn].sort() };
  if (!holds)
    return [
      {
        ...base,
        sentence: `Tip mark of ${placeOf(mark)}: none counts, they sit on opposite sides of the middle.`,
        lacks: [NEEDS_AGAIN.said],
      },
    ];
  const said = markSaid(mark, marks.length > 1, valve);
  if (least.value === undefined || lookAgainOver === undefined)
    return [
      {
        ...base,
        sentence: `${said}: no word yet on its width. It needs ${listed(least.lacks)}.`,
        lacks: least.lacks,
      },
    ];
  const sweep = gapSaid(defined({ value: least.value, low: least.low, high: least.high }));
  return [
    {
      ...base,
      ...wordSaid(wordOf(mark, least, lookAgainOver), valve),
      sentence: `${said}. ${bandSaid(wordOf(mark, least, lookAgainOver), valve)} ${inches(lookAgainOver)}; the least this lift can sweep is ${sweep}.`,
    },
  ];
}

/** A mark over the ordinary is called wide by the band of the trade, or by a narrower one made alike; else it can’t be told. */
function wordSaid(read: MarkWord, valve: MarkedValveDetail): Pick<Judgement, 'word' | 'lacks'> {
  const wants = wantsMark(valve);
  return wants === undefined ? { word: read, lacks: [] } : { word: 'cannot-tell', lacks: [wants.said] };
}

function bandSaid(read: MarkWord, { wideBy, alone, ordinaryTo }: MarkedValveDetail): string {
  if (read !== 'differs') return BAND[read];
  if (wideBy === 'band')
    return `Wide: over the ${inches(ordinaryTo)} that the trade has as ordinary, where this lift asks for no more than`;
  if (wideBy === 'beside') return BAND[read];
  return alone ? ALONE : NO_NARROWER;
}

type MarkWord = 'differs' | 'cannot-tell' | 'agrees';

const BAND: Readonly<Record<MarkWord, string>> = {
  differs: 'Wide: over the ordinary',
  'cannot-tell': 'Too narrow to be all of it: ordinary is up to',
  agrees: 'Ordinary: that is up to',
};

const ALONE = 'One mark alone can’t be called wide; it is looked at again over';
const NO_NARROWER = 'No mark made alike is narrower, so it can’t be called wide; it is looked at again over';

const wordOf = ({ width }: TipMarkEvidence, { low, value = 0 }: LeastSweepDetail, most: number): MarkWord =>
  width > most + EQUAL ? 'differs' : width < (low ?? value) ? 'cannot-tell' : 'agrees';

/** Of several marks the one that is told is known by what it was made with. */
function markSaid(
  mark: TipMarkEvidence,
  several: boolean,
  valve: Pick<MarkedValveDetail, 'follower' | 'stemOpen'>,
): string {
  const { pushrod, shims } = mark;
  const made =
    pushrod !== undefined
      ? ` at ${inches(pushrod)}${overSaid(mark.pushrodOver)}`
      : shims === undefined
        ? ''
        : ` at ${inches(shims)} of shims`;
  return `Tip mark of ${placeOf(mark)}${several ? made : ''}: ${inches(mark.width)} wide, ${placeSaid(mark, valve)}`;
}

/** What the mark is, and what follows from it. */
export function markHeadline(valve: MarkedValveDetail, limit: LimitEvidence): Headline[] {
  return markJudgement(valve, limit).map(({ id, about, sentence }) => ({
    id: `headline:${id}`,
    about,
    step: 'geometry',
    sentence: valve.first === undefined ? sentence : `${sentence} ${valve.first.said}`,
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
