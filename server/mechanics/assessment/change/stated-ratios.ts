import { PLANNED_RATIO, STATED_RATIO } from '../../kit/allowances.ts';
import { isToBeFitted, plansOf } from '../common/plans.ts';
import { nominalSaid } from '../common/said.ts';
import { sameRatio } from '../common/same-ratio.ts';
import { seatedOn } from '../common/seats.ts';
import type { Evidence, Side, ValvePlace } from '../evidence.ts';
import { markOn } from '../ratio/claims/stamp.ts';
import type { ChangeRatio } from './detail.ts';

const percent = (share: number): string => `${Number((share * 100).toPrecision(3))} %`;

function spreadSaid(): string {
  const { under, over } = PLANNED_RATIO;
  return under === over ? `±${percent(over)}` : `−${percent(under)} to +${percent(over)}`;
}

export interface Stated {
  readonly from: 'planned' | 'sold-as' | 'family' | 'card';
  readonly value: number;
  readonly said: string;
}

/** What the rockers are sold as: said of them, else what the catalogue has of their family. */
export function soldRatio({ rockers: { soldAs, family } }: Evidence): Stated | undefined {
  if (soldAs !== undefined)
    return { from: 'sold-as', value: soldAs, said: `the ${nominalSaid(soldAs)} they are sold as` };
  if (family === undefined) return undefined;
  const { name, nominalRatio: value } = family;
  return { from: 'family', value, said: `the ${nominalSaid(value)} of their family, ${name}` };
}

/** What the arms that are off since were sold as. */
export const soldBefore = (value: number): Stated => ({
  from: 'sold-as',
  value,
  said: `the ${nominalSaid(value)} they were sold as`,
});

/** What an arm is stamped as, where its mark can be read. */
export function stampedAs(evidence: Evidence, armId: string | undefined): Stated | undefined {
  const value = markOn(evidence, armId);
  return value === undefined
    ? undefined
    : { from: 'sold-as', value, said: `the ${nominalSaid(value)} stamped on it` };
}

/** The same of the arm that sits on a valve. */
export const stampedOn = (evidence: Evidence, place: ValvePlace | undefined): Stated | undefined =>
  place === undefined ? undefined : stampedAs(evidence, seatedOn(evidence, place)?.id);

/** What the rockers on the engine are sold as; what is to be fitted says nothing of these. */
export function soldOnNow(evidence: Evidence): Stated | undefined {
  const sold = soldRatio(evidence);
  return sold === undefined || isToBeFitted(evidence, sold.value) ? undefined : sold;
}

/**
 * Whether arms of this name are those that the engine has, and not those of a plan: they are none of the plans, or what
 * they are sold as, or where nobody said that, one that is thought of beside the ratio that is to be fitted.
 */
export function isFitted(evidence: Evidence, told: number): boolean {
  const plans = plansOf(evidence);
  if (!plans.some((plan) => sameRatio(plan, told))) return true;
  const sold = soldOnNow(evidence)?.value;
  if (sold !== undefined) return sameRatio(sold, told);
  const { planned } = evidence.rockers;
  return planned !== undefined && soldRatio(evidence) === undefined && !sameRatio(planned, told);
}

/** What the arms on a valve are stamped or sold as, while they are none that are only planned. */
export function statedOnNow(evidence: Evidence, place: ValvePlace | undefined): Stated | undefined {
  const stamped = stampedOn(evidence, place);
  return stamped !== undefined && isFitted(evidence, stamped.value) ? stamped : soldOnNow(evidence);
}

/** An arm that nobody has measured: as it is sold, with what such arms come to. */
export function notMeasured({ from, value, said }: Stated): ChangeRatio {
  const { under, over, source } = PLANNED_RATIO;
  return {
    from,
    basis: from === 'planned' ? 'planned' : 'stated',
    value,
    low: value * (1 - under),
    high: value * (1 + over),
    lashIn: false,
    lacks: [],
    restsOn: [],
    said,
    source: `an arm not measured yet: ${spreadSaid()} (${source})`,
  };
}

function ofCard({ value, said }: CardsOwn): ChangeRatio {
  return {
    from: 'card',
    basis: 'stated',
    value,
    low: value * (1 - STATED_RATIO.share),
    high: value * (1 + STATED_RATIO.share),
    lashIn: false,
    lacks: [],
    restsOn: [],
    said,
    source: `only stated: taken as good to ${percent(STATED_RATIO.share)} (${STATED_RATIO.source})`,
  };
}

const asTheCard = (card: ChangeRatio, what: string): ChangeRatio => ({
  ...notMeasured({ from: 'card', value: card.value, said: card.said }),
  source: `${what} is not said, and taken to be of the card’s ratio, ${spreadSaid()} (${PLANNED_RATIO.source})`,
});

/** Of what is on nobody said anything: arms of the card’s ratio, as such arms come out. */
export const onNow = (card: ChangeRatio | undefined): ChangeRatio | undefined =>
  card && asTheCard(card, 'what is on it');

/** The same of what was on when a gap was read. */
export const onThen = (card: ChangeRatio | undefined): ChangeRatio | undefined =>
  card && asTheCard(card, 'what a gap was read with');

interface CardsOwn {
  readonly value: number;
  readonly said: string;
}

/** What the card works with: said, or its valve lift over its lobe lift where no lash can be in it. */
export function assumedByCard({ card }: Evidence, side: Side): CardsOwn | undefined {
  const { lobeLift, valveLift, lash } = card[side];
  const { assumedRatio } = card;
  if (assumedRatio !== undefined)
    return { value: assumedRatio, said: `the ${nominalSaid(assumedRatio)} the card assumes` };
  if (lobeLift === undefined || valveLift === undefined || lobeLift <= 0 || (lash ?? 0) > 0) return undefined;
  const value = valveLift / lobeLift;
  return { value, said: `the ${nominalSaid(value)} of the card’s own lifts` };
}

/** What the card works with, as a ratio to set others against. */
export function cardsRatio(evidence: Evidence, side: Side): ChangeRatio | undefined {
  const card = assumedByCard(evidence, side);
  return card === undefined ? undefined : ofCard(card);
}
