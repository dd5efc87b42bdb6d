import { IN } from '../../../kit/si.ts';
import type { AssessedQuantity } from '../../assessment.ts';
import type { Evidence, Side } from '../../evidence.ts';
import type { Claim } from './marks.ts';

/** How far apart the card's ratio and the arm's must be to speak of two (common practice, no published source). */
const RATIOS_APART = 0.02;

interface CardRatio {
  readonly ratio: number;
  /** Printed or said as such; else its valve lift over its lobe lift. */
  readonly from: 'said' | 'lifts' | 'lifts-and-lash';
}

export const near = (ratio: number, other: number | undefined): boolean =>
  other !== undefined && Math.abs(ratio - other) <= RATIOS_APART;

/** The ratio of the card's lifts: gross as printed, unless only with the lash put back it is what it should be. */
function ofLifts({ card }: Evidence, side: Side, expected: number | undefined): CardRatio | undefined {
  const { lobeLift, valveLift, lash } = card[side];
  if (lobeLift === undefined || valveLift === undefined || lobeLift <= 0) return undefined;
  const gross = valveLift / lobeLift;
  const net = (valveLift + (lash ?? 0)) / lobeLift;
  return !near(gross, expected) && near(net, expected)
    ? { ratio: net, from: 'lifts-and-lash' }
    : { ratio: gross, from: 'lifts' };
}

/**
 * What the card works with: said, or its valve lift over its lobe lift. A card that says the arm's own ratio and prints a
 * valve lift of another is told by that lift: it is what the caller holds the reading against.
 */
export function cardRatioOf(evidence: Evidence, side: Side, claim?: Claim): CardRatio | undefined {
  const said = evidence.card.assumedRatio;
  const lifts = ofLifts(evidence, side, said ?? claim?.ratio);
  if (said === undefined) return lifts;
  if (lifts?.from === 'lifts-and-lash') return lifts;
  return lifts !== undefined && !near(lifts.ratio, said) && near(said, claim?.ratio)
    ? lifts
    : { ratio: said, from: 'said' };
}

/** A card prints thousandths: each of its lifts is good to half of one. */
const PRINTED_TO = 0.0005 * IN;

/** The ratio that the lifts of the card come to, for each side that prints both. */
function impliedRatio(evidence: Evidence, side: Side): AssessedQuantity[] {
  const { card, rockers } = evidence;
  const { lobeLift, valveLift } = card[side];
  const lifts = ofLifts(evidence, side, card.assumedRatio ?? rockers.soldAs);
  if (lobeLift === undefined || valveLift === undefined || lifts === undefined) return [];
  const value = lifts.ratio;
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
      conditions: [
        lifts.from === 'lifts'
          ? 'its valve lift over its lobe lift'
          : 'its valve lift with the lash put back, over its lobe lift',
      ],
      lacks: [],
      restsOn: [],
    },
  ];
}

export const cardQuantities = (evidence: Evidence): AssessedQuantity[] => [
  ...impliedRatio(evidence, 'intake'),
  ...impliedRatio(evidence, 'exhaust'),
];
