import { defined } from '../../../../shared/defined.ts';
import { byText } from '../../kit/by-text.ts';
import { plansOf } from '../common/plans.ts';
import { nominalSaid, placeOf, ratioSaid } from '../common/said.ts';
import { sameRatio } from '../common/same-ratio.ts';
import { isOffSince } from '../common/seats.ts';
import type { ValveRatio } from '../common/valve-ratio.ts';
import type { Evidence, Side, ValvePlace } from '../evidence.ts';
import { markOn } from '../ratio/claims/stamp.ts';
import type { ChangeRatio } from './detail.ts';
import {
  cardsRatio,
  isFitted,
  notMeasured,
  onNow,
  type Stated,
  soldRatio,
  stampedOn,
  statedOnNow,
} from './stated-ratios.ts';

/** The arms that something was read with. */
interface ReadWith {
  /** Those of this plan. */
  readonly plan?: number;
  /** Those that the engine has, or had. */
  readonly fitted: boolean;
}

/** Of which plan those are that something was read with, and whether they are on or were; unknown where nothing tells. */
export function armsOf(
  { armId, comesOff }: { readonly armId?: string; readonly comesOff?: true },
  evidence: Evidence,
  soldAsThen?: number,
): ReadWith | undefined {
  const plans = plansOf(evidence);
  if (plans.length === 0 || comesOff === true) return { fitted: true };
  const told = markOn(evidence, armId) ?? soldAsThen ?? soldRatio(evidence)?.value;
  if (told === undefined) return undefined;
  return {
    ...defined({ plan: plans.find((plan) => sameRatio(plan, told)) }),
    fitted: isFitted(evidence, told),
  };
}

/** Read with an arm of this plan; without one, with an arm that is on. */
export function isOfPlan(ratio: ValveRatio, plan: number | undefined, evidence: Evidence): boolean {
  const arms = armsOf(ratio, evidence, ratio.soldAsThen);
  return plan === undefined ? arms?.fitted === true : arms?.plan === plan;
}

/** Only a lift with the lash out may have it taken off; one of which nobody said so may carry it. */
const carriesLash = (lashIn: ValveRatio['lashIn']): boolean => lashIn === 'left-in' || lashIn === 'not-said';

/** How far from what a calculation wants: a light spring with the lash out comes first. */
const unfit = ({ spring, lashIn, lacks }: ValveRatio): number =>
  (lacks.length > 0 ? 4 : 0) + (spring === 'light' ? 0 : 2) + (carriesLash(lashIn) ? 1 : 0);

export const bestOf = (ratios: readonly ValveRatio[]): ValveRatio | undefined =>
  ratios.toSorted(
    (a, b) => unfit(a) - unfit(b) || a.high - a.low - (b.high - b.low) || byText(a.setUpId, b.setUpId),
  )[0];

export function measured(ratio: ValveRatio): ChangeRatio {
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

/** What the arms that are on now are stamped or sold as. */
export const nominalNow = (evidence: Evidence, place: ValvePlace | undefined): number | undefined =>
  statedOnNow(evidence, place)?.value;

interface WhereAndThen {
  readonly place?: ValvePlace;
  /** What the gaps that were read with arms before were read with. */
  readonly was?: ChangeRatio;
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
  const best = bestOf(on.filter((ratio) => isOfPlan(ratio, undefined, evidence)));
  if (best !== undefined) return measured(best);
  const stated = statedOnNow(evidence, place);
  return stated === undefined ? onNow(cardsRatio(evidence, valve)) : notMeasured(stated);
}

/** Ratios of arms that are on, and of arms that are off since. */
export const onAndOff = (
  ratios: readonly ValveRatio[],
  evidence: Evidence,
): Record<'on' | 'off', ValveRatio[]> => {
  const isOff = (each: ValveRatio): boolean => each.soldAsThen !== undefined || isOffSince(each, evidence);
  return { on: ratios.filter((each) => !isOff(each)), off: ratios.filter(isOff) };
};

/**
 * The ratios before and after, each from the best that is known of it.
 *
 * With a planned ratio, after is the planned arm: measured where it was, else as it is sold; before is what is fitted:
 * measured, sold as, its family's, or the card's. Without one, after is the arm on the valve and before what the card
 * assumes. What is planned says nothing of what is on.
 */
export function beforeAndAfter(
  evidence: Evidence,
  valve: Side,
  ratios: readonly ValveRatio[],
  plan: number | undefined,
  { place, was }: WhereAndThen = {},
): BeforeAndAfter {
  const { on, off } = onAndOff(ratios, evidence);
  const read = (arms: number | undefined, from: readonly ValveRatio[] = ratios) => {
    const best = bestOf(from.filter((ratio) => isOfPlan(ratio, arms, evidence)));
    return best === undefined ? undefined : measured(best);
  };
  const assumed = cardsRatio(evidence, valve);
  // An arm that is off tells what was there before; the one that sits there now, what there is.
  if (plan === undefined) {
    const stated = stampedOn(evidence, place) ?? soldRatio(evidence);
    return defined({
      before: read(undefined, off) ?? was ?? assumed,
      after: read(undefined, on) ?? (stated && notMeasured(stated)),
    });
  }
  const now = statedOnNow(evidence, place);
  const before =
    read(undefined, on) ?? read(undefined, off) ?? (now && notMeasured(now)) ?? was ?? onNow(assumed);
  const planned: Stated = { from: 'planned', value: plan, said: `the planned ${nominalSaid(plan)}` };
  return defined({ before, after: read(plan) ?? notMeasured(planned) });
}
