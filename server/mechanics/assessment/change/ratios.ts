import { defined } from '../../../../shared/defined.ts';
import { PLANNED_RATIO, STATED_RATIO } from '../../kit/allowances.ts';
import { nominalSaid, placeOf, ratioSaid } from '../common/said.ts';
import { isOffSince, seatedOn } from '../common/seats.ts';
import type { Evidence, Side, ValvePlace } from '../evidence.ts';
import { markOn } from '../ratio/stamp.ts';
import type { ChangeRatio } from './detail.ts';
import type { ValveRatio } from './input.ts';
import { plansOf } from './plans.ts';

const same = (a: number | undefined, b: number): boolean => a !== undefined && Math.abs(a - b) < 0.0005;

/** Which plan something was read with the arms of, or those fitted before; unknown where nothing tells. */
export function armsOf(
  { armId }: { readonly armId?: string },
  evidence: Evidence,
  soldAsThen?: number,
): number | 'fitted' | undefined {
  const plans = plansOf(evidence);
  if (plans.length === 0) return 'fitted';
  const told = markOn(evidence, armId) ?? soldAsThen ?? soldRatio(evidence)?.value;
  if (told === undefined) return undefined;
  return plans.find((plan) => same(told, plan)) ?? 'fitted';
}

/** Read with an arm of this plan; without one, with an arm that is on. */
export const isOfPlan = (ratio: ValveRatio, plan: number | undefined, evidence: Evidence): boolean =>
  armsOf(ratio, evidence) === (plan ?? 'fitted');

/** Only a lift with the lash out may have it taken off; one of which nobody said so may carry it. */
const carriesLash = (lashIn: ValveRatio['lashIn']): boolean => lashIn === 'left-in' || lashIn === 'not-said';

/** How far from what a calculation wants: a light spring with the lash out comes first. */
const unfit = ({ spring, lashIn, lacks }: ValveRatio): number =>
  (lacks.length > 0 ? 4 : 0) + (spring === 'light' ? 0 : 2) + (carriesLash(lashIn) ? 1 : 0);

const bestOf = (ratios: readonly ValveRatio[]): ValveRatio | undefined =>
  ratios.toSorted(
    (a, b) => unfit(a) - unfit(b) || a.high - a.low - (b.high - b.low) || (a.setUpId < b.setUpId ? -1 : 1),
  )[0];

function measured(ratio: ValveRatio): ChangeRatio {
  const { value, low, high, basis, spring, lashIn, lacks, restsOn } = ratio;
  return {
    from: 'measured',
    basis,
    value,
    low,
    high,
    spring,
    lashIn: carriesLash(lashIn),
    lacks,
    restsOn,
    said: `the ${basis === 'measured' ? 'measured' : 'calculated'} ${ratioSaid(value)}${spring === 'running' ? ' on the running spring' : ''}`,
    source: `${spring}-spring ratio of ${placeOf(ratio)}`,
  };
}

const percent = (share: number): string => `${Number((share * 100).toPrecision(3))} %`;

function spreadSaid(): string {
  const { under, over } = PLANNED_RATIO;
  return under === over ? `±${percent(over)}` : `−${percent(under)} to +${percent(over)}`;
}

interface Stated {
  readonly from: 'planned' | 'sold-as' | 'family' | 'card';
  readonly value: number;
  readonly said: string;
}

/** What the rockers are sold as: said of them, else what the catalogue has of their family. */
function soldRatio({ rockers: { soldAs, family } }: Evidence): Stated | undefined {
  if (soldAs !== undefined)
    return { from: 'sold-as', value: soldAs, said: `the ${nominalSaid(soldAs)} they are sold as` };
  if (family === undefined) return undefined;
  const { name, nominalRatio: value } = family;
  return { from: 'family', value, said: `the ${nominalSaid(value)} of their family, ${name}` };
}

/** What the arms that are off since were sold as, where a gap of the valve was read with them. */
function soldBefore({ sheet }: Evidence, place: ValvePlace | undefined): Stated | undefined {
  const value = sheet.find(
    (each) => place !== undefined && each.otherArms === 'off-since' && placeOf(each) === placeOf(place),
  )?.soldAsThen;
  return value === undefined
    ? undefined
    : { from: 'sold-as', value, said: `the ${nominalSaid(value)} they were sold as` };
}

/** What the arm that sits on a valve is stamped as, where its mark can be read. */
function stampedOn(evidence: Evidence, place: ValvePlace | undefined): Stated | undefined {
  const value = place === undefined ? undefined : markOn(evidence, seatedOn(evidence, place)?.id);
  return value === undefined
    ? undefined
    : { from: 'sold-as', value, said: `the ${nominalSaid(value)} stamped on it` };
}

/** An arm that nobody has measured: as it is sold, with what such arms come to. */
function notMeasured({ from, value, said }: Stated): ChangeRatio {
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

function ofCard(value: number): ChangeRatio {
  return {
    from: 'card',
    basis: 'stated',
    value,
    low: value * (1 - STATED_RATIO.share),
    high: value * (1 + STATED_RATIO.share),
    lashIn: false,
    lacks: [],
    restsOn: [],
    said: `the ${nominalSaid(value)} the card assumes`,
    source: `only stated: taken as good to ${percent(STATED_RATIO.share)} (${STATED_RATIO.source})`,
  };
}

/** Of what is on nobody said anything: arms of the card’s ratio, as such arms come out. */
const onNow = (card: ChangeRatio | undefined): ChangeRatio | undefined =>
  card && {
    ...notMeasured({ from: 'card', value: card.value, said: card.said }),
    source: `what is on it is not said, and taken to be of the card’s ratio, ${spreadSaid()} (${PLANNED_RATIO.source})`,
  };

/** What the card works with: said, or its valve lift over its lobe lift where no lash can be in it. */
function cardRatio({ card }: Evidence, side: Side): number | undefined {
  const { lobeLift, valveLift, lash } = card[side];
  if (card.assumedRatio !== undefined) return card.assumedRatio;
  if (lobeLift === undefined || valveLift === undefined || (lash ?? 0) > 0) return undefined;
  return valveLift / lobeLift;
}

export interface BeforeAndAfter {
  readonly before?: ChangeRatio;
  readonly after?: ChangeRatio;
}

/** What the card works with, as a ratio to set others against. */
export function cardsRatio(evidence: Evidence, side: Side): ChangeRatio | undefined {
  const card = cardRatio(evidence, side);
  return card === undefined ? undefined : ofCard(card);
}

/** What the arms that are on now are stamped or sold as; what is sold as one of the plans is what is to be fitted. */
export function nominalNow(evidence: Evidence, place: ValvePlace | undefined): number | undefined {
  const stated = stampedOn(evidence, place) ?? soldRatio(evidence);
  return plansOf(evidence).some((each) => same(stated?.value, each)) ? undefined : stated?.value;
}

/**
 * The ratios before and after, each from the best that is known of it.
 *
 * With a planned ratio, after is the planned arm: measured where it was, else as it is sold; before is what is fitted:
 * measured, sold as, its family's, or the card's. Without one, after is the arm on the valve and before what the card
 * assumes.
 */
export function beforeAndAfter(
  evidence: Evidence,
  valve: Side,
  ratios: readonly ValveRatio[],
  plan: number | undefined,
  place?: ValvePlace,
): BeforeAndAfter {
  const [on, off] = [false, true].map((isOff) =>
    ratios.filter((each) => isOffSince(each, evidence) === isOff),
  );
  const read = (arms: number | 'fitted', from: readonly ValveRatio[] = ratios) => {
    const best = bestOf(from.filter((ratio) => armsOf(ratio, evidence) === arms));
    return best === undefined ? undefined : measured(best);
  };
  const assumed = cardsRatio(evidence, valve);
  const stated = stampedOn(evidence, place) ?? soldRatio(evidence);
  const sold = stated && notMeasured(stated);
  const then = soldBefore(evidence, place);
  const was = then && notMeasured(then);
  // An arm that is off tells what was there before; the one that sits there now, what there is.
  if (plan === undefined)
    return defined({ before: read('fitted', off) ?? was ?? assumed, after: read('fitted', on) ?? sold });
  // What is sold as one of the plans is what is to be fitted, not what is in it.
  const isPlan = plansOf(evidence).some((each) => same(stated?.value, each));
  const before =
    was ?? read('fitted', on) ?? read('fitted', off) ?? (isPlan ? undefined : sold) ?? onNow(assumed);
  const planned: Stated = { from: 'planned', value: plan, said: `the planned ${nominalSaid(plan)}` };
  return defined({ before, after: read(plan) ?? notMeasured(planned) });
}
