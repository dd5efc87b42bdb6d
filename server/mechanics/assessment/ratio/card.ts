import { defined } from '../../../../shared/defined.ts';
import { sideOfValve } from '../../../../shared/schemas/words.ts';
import { allowance } from '../../kit/allowances.ts';
import { IN } from '../../kit/si.ts';
import type { AssessedQuantity, Judgement } from '../assessment.ts';
import { inDoubt } from '../common/asked.ts';
import { firstSaid } from '../common/first-said.ts';
import { byId, inches, nominalSaid, placeOf, valveSubject } from '../common/said.ts';
import type { Evidence, Side } from '../evidence.ts';
import type { RatioWord } from '../words.ts';
import type { GroupExplained } from './explain.ts';
import { halfWidthOf } from './intervals.ts';
import type { SetUpKnown } from './known.ts';
import { restingOn } from './lacking.ts';
import { type Claim, claimSaid } from './marks.ts';
import { NOT_NOW } from './ratio-said.ts';

/** How far apart the card's ratio and the arm's must be to speak of two (common practice, no published source). */
const RATIOS_APART = 0.02;

interface CardRatio {
  readonly ratio: number;
  /** Printed or said as such; else its valve lift over its lobe lift. */
  readonly from: 'said' | 'lifts' | 'lifts-and-lash';
}

/**
 * What the card works with: said, or its valve lift over its lobe lift. A printed valve lift is taken as gross, unless it
 * meets what the arm is held to be once the lash is put back.
 */
function cardRatioOf({ card }: Evidence, side: Side, claim?: Claim): CardRatio | undefined {
  const { lobeLift, valveLift, lash } = card[side];
  if (card.assumedRatio !== undefined) return { ratio: card.assumedRatio, from: 'said' };
  if (lobeLift === undefined || valveLift === undefined || lobeLift <= 0) return undefined;
  const net = (valveLift + (lash ?? 0)) / lobeLift;
  if (lash !== undefined && claim !== undefined && Math.abs(net - claim.ratio) <= RATIOS_APART)
    return { ratio: net, from: 'lifts-and-lash' };
  return { ratio: valveLift / lobeLift, from: 'lifts' };
}

/** A card prints thousandths: each of its lifts is good to half of one. */
const PRINTED_TO = 0.0005 * IN;

/** The ratio that the lifts of the card come to, for each side that prints both. */
function impliedRatio({ card }: Evidence, side: Side): AssessedQuantity[] {
  const { lobeLift, valveLift } = card[side];
  if (lobeLift === undefined || valveLift === undefined || lobeLift <= 0) return [];
  const value = valveLift / lobeLift;
  const half = value * Math.hypot(PRINTED_TO / valveLift, PRINTED_TO / lobeLift);
  return [
    {
      id: `card-ratio:${side}`,
      name: 'Ratio that the card works with',
      about: { of: 'side', valve: side },
      dimension: 'ratio',
      value,
      low: value - half,
      high: value + half,
      basis: 'stated',
      conditions: ['its valve lift over its lobe lift'],
      lacks: [],
      restsOn: [],
    },
  ];
}

export const cardQuantities = (evidence: Evidence): AssessedQuantity[] => [
  ...impliedRatio(evidence, 'intake'),
  ...impliedRatio(evidence, 'exhaust'),
];

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

/** Doubts about the very passes that the lobe is read by: till they are answered nothing stands on it. */
const doubtsOfLobe = ({ read: { lobe }, questions }: SetUpKnown): string[] =>
  questions
    .filter((each) => inDoubt(each) && each.restsOn.some((id) => lobe.entryIds.includes(id)))
    .map(({ ask }) => `the answer to “${ask}”`);

/** The lobe as read at the lifter against the lobe that the card prints. */
function lobeAgainstCard(evidence: Evidence, known: SetUpKnown, stopped: boolean): Judgement[] {
  const { setUp, lobe } = known.read;
  const printed = evidence.card[sideOfValve(setUp.valve)].lobeLift;
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
  const lacks = [...lobe.lacks, ...doubtsOfLobe(known)];
  const word = lacks.length > 0 ? undefined : lobeWord(lobe.value - printed, half);
  return [
    {
      id: `card-lobe:${setUp.id}`,
      about: valveSubject(setUp),
      against: { to: 'card-lobe', lobeLift: printed },
      ...defined({ word }),
      sentence:
        word === undefined
          ? `The lobe is not set against the card yet. ${firstSaid(lacks)}`
          : lobeSaid(word, lobe.value, printed, stopped),
      lacks,
      restsOn: [...lobe.entryIds].sort(),
    },
  ];
}

/** How much of what the reading is off the card's valve lift is the card's own ratio. */
function complaintSaid(off: number, ofRatio: number, said: string): string {
  if (Math.abs(off) <= allowance('card-lobe'))
    return `The lift as read is the card’s, and not what ${said} would make.`;
  const start = `The lift as read is ${inches(Math.abs(off))} ${off < 0 ? 'under' : 'over'} the card’s; its ratio makes ${inches(Math.abs(ofRatio))} of that`;
  return Math.abs(off - ofRatio) <= allowance('card-lobe')
    ? `${start}: it is the card’s ratio, not the part.`
    : `${start}, and ${inches(Math.abs(off - ofRatio))} is left to be explained.`;
}

/** Whether the complaint is the ratio that the card works with, and not the part. */
function cardAgainstArm(evidence: Evidence, explained: GroupExplained): Judgement[] {
  const { group, claims, given } = explained;
  const [claim] = claims;
  const ofCard = cardRatioOf(evidence, sideOfValve(group.valve), claim);
  if (claim === undefined || ofCard === undefined || Math.abs(ofCard.ratio - claim.ratio) <= RATIOS_APART)
    return [];
  const { lobeLift: lobe } = evidence.card[sideOfValve(group.valve)];
  const said = claimSaid(claim, nominalSaid(claim.ratio));
  const lifts =
    lobe === undefined
      ? ''
      : `: on its ${inches(lobe)} lobe that is ${inches(lobe * ofCard.ratio)}, and ${inches(lobe * claim.ratio)} with ${said}`;
  const resting = restingOn(explained);
  const read = resting?.lacks.length === 0 ? resting.read.lift?.read : undefined;
  const complaint =
    lobe === undefined || read === undefined
      ? 'A lift that is off by as much is the card’s ratio, not the part.'
      : complaintSaid(read - lobe * ofCard.ratio, lobe * (claim.ratio - ofCard.ratio), said);
  return [
    {
      id: `card-ratio:${group.key}`,
      about: valveSubject(group),
      against: { to: 'card', ratio: ofCard.ratio },
      sentence: `The card works with ${nominalSaid(Number(ofCard.ratio.toFixed(2)))}${lifts}. ${complaint}`,
      lacks: [],
      restsOn: read === undefined ? [] : [...(given?.entryIds ?? [])].sort(),
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
