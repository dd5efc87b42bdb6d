import { defined } from '../../../../shared/defined.ts';
import { nominalSaid, placeOf, ratioSaid } from '../common/said.ts';
import { sameRatio } from '../common/same-ratio.ts';
import { isOffSince } from '../common/seats.ts';
import type { Evidence, Side, ValvePlace } from '../evidence.ts';
import { markOn } from '../ratio/stamp.ts';
import type { ChangeRatio } from './detail.ts';
import type { ValveRatio } from './input.ts';
import { plansOf } from './plans.ts';
import {
  cardsRatio,
  notMeasured,
  onNow,
  type Stated,
  soldBefore,
  soldRatio,
  stampedOn,
} from './stated-ratios.ts';

const same = (a: number | undefined, b: number): boolean => a !== undefined && sameRatio(a, b);

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
  armsOf(ratio, evidence, ratio.soldAsThen) === (plan ?? 'fitted');

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

export interface BeforeAndAfter {
  readonly before?: ChangeRatio;
  readonly after?: ChangeRatio;
}

/** What the arms that are on now are stamped or sold as; what is sold as one of the plans is what is to be fitted. */
export function nominalNow(evidence: Evidence, place: ValvePlace | undefined): number | undefined {
  const stated = stampedOn(evidence, place) ?? soldRatio(evidence);
  return plansOf(evidence).some((each) => same(stated?.value, each)) ? undefined : stated?.value;
}

interface WhereAndThen {
  readonly place?: ValvePlace;
  /** What arms that are off since were sold as. */
  readonly soldThen?: number;
}

/**
 * What is on the engine while another ratio is planned: as it was read, as it is sold, or of the card’s ratio where
 * nobody said anything of it.
 */
export function onToday(
  evidence: Evidence,
  valve: Side,
  ratios: readonly ValveRatio[],
  place: ValvePlace | undefined,
): ChangeRatio | undefined {
  const on = ratios.filter((each) => each.soldAsThen === undefined && !isOffSince(each, evidence));
  const best = bestOf(on.filter((ratio) => armsOf(ratio, evidence) === 'fitted'));
  if (best !== undefined) return measured(best);
  const stated = stampedOn(evidence, place) ?? soldRatio(evidence);
  const isPlan = plansOf(evidence).some((each) => same(stated?.value, each));
  return stated === undefined || isPlan ? onNow(cardsRatio(evidence, valve)) : notMeasured(stated);
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
  { place, soldThen }: WhereAndThen = {},
): BeforeAndAfter {
  const [on, off] = [false, true].map((isOff) =>
    ratios.filter((each) => isOff === (each.soldAsThen !== undefined || isOffSince(each, evidence))),
  );
  const read = (arms: number | 'fitted', from: readonly ValveRatio[] = ratios) => {
    const best = bestOf(from.filter((ratio) => armsOf(ratio, evidence, ratio.soldAsThen) === arms));
    return best === undefined ? undefined : measured(best);
  };
  const assumed = cardsRatio(evidence, valve);
  const stated = stampedOn(evidence, place) ?? soldRatio(evidence);
  const sold = stated && notMeasured(stated);
  const was = soldThen === undefined ? undefined : notMeasured(soldBefore(soldThen));
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
