import { defined } from '../../../../shared/defined.ts';
import { allowance } from '../../kit/allowances.ts';
import { IN } from '../../kit/si.ts';
import type { Judgement } from '../assessment.ts';
import { byId, inches, nominalSaid, placeOf, valveSubject } from '../common/said.ts';
import type { Evidence, Side } from '../evidence.ts';
import type { RatioWord } from '../words.ts';
import type { GroupExplained } from './explain.ts';
import { halfWidthOf } from './intervals.ts';
import type { SetUpKnown } from './known.ts';
import { claimSaid } from './marks.ts';
import { NOT_NOW } from './ratio-said.ts';

/** How far apart the card's ratio and the arm's must be to speak of two (common practice, no published source). */
const RATIOS_APART = 0.02;

/** What the card works with: said, or its valve lift over its lobe lift. */
function cardRatioOf({ card }: Evidence, side: Side): number | undefined {
  const { lobeLift, valveLift } = card[side];
  if (card.assumedRatio !== undefined) return card.assumedRatio;
  return lobeLift === undefined || valveLift === undefined || lobeLift <= 0
    ? undefined
    : valveLift / lobeLift;
}

function lobeWord(off: number, half: number): RatioWord {
  const band = allowance('card-lobe');
  if (Math.abs(off) <= Math.max(band, half) + 1e-9 * IN) return 'agrees';
  return Math.abs(off) > band + half ? 'differs' : 'cannot-tell';
}

function lobeSaid(word: RatioWord, read: number, printed: number, stopped: boolean): string {
  const start = `The lobe reads ${inches(read)}`;
  if (word === 'agrees') return `${start}: agrees with the ${inches(printed)} on the card.`;
  if (word === 'cannot-tell')
    return `${start}: it cannot be told whether that is the ${inches(printed)} on the card. ${stopped ? NOT_NOW : 'Read it three times at the lifter.'}`;
  return `${start}, differs from the ${inches(printed)} on the card by ${inches(Math.abs(read - printed))}: which lobe, which card, or wear?`;
}

/** The lobe as read at the lifter against the lobe that the card prints. */
function lobeAgainstCard(evidence: Evidence, known: SetUpKnown, stopped: boolean): Judgement[] {
  const { setUp, lobe } = known.read;
  const printed = evidence.card[setUp.valve].lobeLift;
  if (
    printed === undefined ||
    printed <= 0 ||
    lobe.source !== 'indicator' ||
    lobe.value === undefined ||
    lobe.from !== undefined
  )
    return [];
  const half = halfWidthOf(lobe.passes.used, {
    graduation: setUp.graduation,
    errorLimit: setUp.lobeErrorLimit,
  });
  const lacks = lobe.lacks;
  const word = lacks.length > 0 ? undefined : lobeWord(lobe.value - printed, half);
  return [
    {
      id: `card-lobe:${setUp.id}`,
      about: valveSubject(setUp),
      against: { to: 'card-lobe', lobeLift: printed },
      ...defined({ word }),
      sentence:
        word === undefined
          ? `The lobe is not set against the card yet. First: ${lacks.join('; ')}.`
          : lobeSaid(word, lobe.value, printed, stopped),
      lacks,
      restsOn: [...lobe.entryIds].sort(),
    },
  ];
}

/** Whether the complaint is the ratio that the card works with, and not the part. */
function cardAgainstArm(evidence: Evidence, { group, claims }: GroupExplained): Judgement[] {
  const [claim] = claims;
  const ofCard = cardRatioOf(evidence, group.valve);
  if (claim === undefined || ofCard === undefined || Math.abs(ofCard - claim.ratio) <= RATIOS_APART)
    return [];
  const lobe = evidence.card[group.valve].lobeLift;
  const lifts =
    lobe === undefined
      ? ''
      : `: on its ${inches(lobe)} lobe that is ${inches(lobe * ofCard)} there and ${inches(lobe * claim.ratio)} with ${claimSaid(claim, nominalSaid(claim.ratio))}`;
  return [
    {
      id: `card-ratio:${group.key}`,
      about: valveSubject(group),
      against: { to: 'card', ratio: ofCard },
      sentence: `The card works with ${nominalSaid(ofCard)}${lifts}. A lift that is off by as much is the card’s ratio, not the part.`,
      lacks: [],
      restsOn: [],
    },
  ];
}

/** What the card is told by: its ratio beside the arm's, and its lobes beside those read. */
export function cardJudgements(
  evidence: Evidence,
  explained: readonly GroupExplained[],
  known: readonly SetUpKnown[],
  stopped: boolean,
): Judgement[] {
  const places = new Map<string, Judgement[]>();
  for (const each of explained)
    places.set(`${placeOf(each.group)} ${each.group.key}`, cardAgainstArm(evidence, each));
  return [
    ...[...places.values()].flat(),
    ...known.flatMap((each) => lobeAgainstCard(evidence, each, stopped)),
  ].sort(byId);
}
