import { sideOfValve } from '../../../../shared/schemas/words.ts';
import { allowance } from '../../kit/allowances.ts';
import { IN } from '../../kit/si.ts';
import type { AssessedQuantity, Judgement } from '../assessment.ts';
import { inches, nominalSaid, valveSubject } from '../common/said.ts';
import type { Evidence, Side } from '../evidence.ts';
import type { GroupExplained } from './explain.ts';
import { restingOn } from './lacking.ts';
import { type Claim, claimSaid } from './marks.ts';

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

/** The ratio that the card works with, beside what each arm is held to be. */
export const cardRatioJudgements = (evidence: Evidence, explained: readonly GroupExplained[]): Judgement[] =>
  explained.flatMap((each) => cardAgainstArm(evidence, each));
