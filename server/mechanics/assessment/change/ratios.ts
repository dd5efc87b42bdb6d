import { defined } from '../../../../shared/defined.ts';
import { byText } from '../../kit/by-text.ts';
import { nominalSaid, placeOf, ratioSaid } from '../common/said.ts';
import type { ValveRatio } from '../common/valve-ratio.ts';
import type { Evidence, Side, ValvePlace } from '../evidence.ts';
import type { ChangeRatio } from './detail.ts';
import {
  cardsRatio,
  notMeasured,
  onNow,
  type Stated,
  soldRatio,
  stampedOn,
  statedOnNow,
} from './stated-ratios.ts';
import { type WhoseArms, whoseArms } from './whose-arms.ts';

/** Only a lift with the lash out may have it taken off; one of which nobody said so may carry it. */
const carriesLash = (lashIn: ValveRatio['lashIn']): boolean => lashIn === 'left-in' || lashIn === 'not-said';

/** How far from what a calculation wants: a light spring with the lash out comes first. */
const unfit = ({ spring, lashIn, lacks }: ValveRatio): number =>
  (lacks.length > 0 ? 4 : 0) + (spring === 'light' ? 0 : 2) + (carriesLash(lashIn) ? 1 : 0);

/** The one to calculate with: the fittest, then the narrowest. */
export const bestOf = (ratios: readonly ValveRatio[]): ValveRatio | undefined =>
  ratios.toSorted(
    (a, b) => unfit(a) - unfit(b) || a.high - a.low - (b.high - b.low) || byText(a.setUpId, b.setUpId),
  )[0];

/**
 * Of the arms that a gap was read with, or that are on while others are planned: none of which it is not known whether it
 * holds, and none that has lost its lash. The arm is then taken as it is stamped or sold, with what such arms come to.
 */
const isSettled = ({ open, lashIn }: ValveRatio): boolean => open !== true && lashIn !== 'left-in';

/** The best of those. */
export const bestSettled = (ratios: readonly ValveRatio[]): ValveRatio | undefined =>
  bestOf(ratios.filter(isSettled));

/** As the calculation of a change takes it. */
export function measured(ratio: ValveRatio): ChangeRatio {
  const { value, low, high, basis, spring, lashIn, lacks, restsOn, many } = ratio;
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
    source:
      many === undefined
        ? `${spring}-spring ratio of ${placeOf(ratio)}`
        : `${spring}-spring ratios of ${many} valves of the per-valve sheet, which read alike: its interval holds that of each`,
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
  const best = bestSettled(ratios.filter((ratio) => whoseArms(ratio, evidence)?.on === true));
  if (best !== undefined) return measured(best);
  const stated = statedOnNow(evidence, place);
  return stated === undefined ? onNow(cardsRatio(evidence, valve)) : notMeasured(stated);
}

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
  const read = (isMeant: (whose: WhoseArms) => boolean, bestOfAll = bestSettled) => {
    const best = bestOfAll(
      ratios.filter((ratio) => {
        const whose = whoseArms(ratio, evidence);
        return whose !== undefined && isMeant(whose);
      }),
    );
    return best === undefined ? undefined : measured(best);
  };
  const off = read((whose) => whose.off);
  const assumed = cardsRatio(evidence, valve);
  // An arm that is off tells what was there before; the one that sits there now, what there is.
  if (plan === undefined) {
    const stated = stampedOn(evidence, place) ?? soldRatio(evidence);
    const now = read((whose) => whose.on, bestOf);
    return defined({
      before: off ?? was ?? assumed,
      after: now ?? (stated && notMeasured(stated)),
    });
  }
  const now = statedOnNow(evidence, place);
  const before = read((whose) => whose.on) ?? off ?? (now && notMeasured(now)) ?? was ?? onNow(assumed);
  const planned: Stated = { from: 'planned', value: plan, said: `the planned ${nominalSaid(plan)}` };
  return defined({ before, after: read((whose) => whose.plan === plan, bestOf) ?? notMeasured(planned) });
}
