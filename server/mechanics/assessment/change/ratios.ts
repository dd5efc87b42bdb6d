import { defined } from '../../../../shared/defined.ts';
import { PLANNED_RATIO, STATED_RATIO } from '../../kit/allowances.ts';
import { nominalSaid, placeOf, ratioSaid } from '../common/said.ts';
import type { Evidence, ValvePlace } from '../evidence.ts';
import { ratioOfStamp } from '../ratio/marks.ts';
import type { ChangeRatio } from './detail.ts';
import type { ValveRatio } from './input.ts';

const same = (a: number | undefined, b: number): boolean => a !== undefined && Math.abs(a - b) < 0.0005;

/** Whether a ratio was read with the arms that are planned, or with those fitted before; unknown where nothing tells. */
function armsOf(ratio: ValveRatio, evidence: Evidence): 'planned' | 'fitted' | undefined {
  const { planned, soldAs } = evidence.rockers;
  if (planned === undefined) return 'fitted';
  const told = ratioOfStamp(evidence.arms.find(({ id }) => id === ratio.armId)) ?? soldAs;
  if (told === undefined) return undefined;
  return same(told, planned) ? 'planned' : 'fitted';
}

/** How far from what a calculation wants: a light spring with the lash out comes first. */
const unfit = ({ spring, lashIn, lacks }: ValveRatio): number =>
  (lacks.length > 0 ? 4 : 0) + (spring === 'light' ? 0 : 2) + (lashIn === 'left-in' ? 1 : 0);

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
    lashIn: lashIn === 'left-in',
    lacks,
    restsOn,
    said: `the ${basis === 'measured' ? 'measured' : 'calculated'} ${ratioSaid(value)}`,
    source: `${spring}-spring ratio of ${placeOf(ratio)}`,
  };
}

const percent = (share: number): string => `${Number((share * 100).toPrecision(3))} %`;

/** An arm that nobody has measured: as it is sold, with what such arms come to. */
function notMeasured(from: 'planned' | 'sold-as', value: number): ChangeRatio {
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
    said:
      from === 'planned' ? `the planned ${nominalSaid(value)}` : `the ${nominalSaid(value)} they are sold as`,
    source: `an arm not measured yet: −${percent(under)} to +${percent(over)} (${source})`,
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

/** What the card works with: said, or its valve lift over its lobe lift where no lash can be in it. */
function cardRatio({ card }: Evidence, side: ValvePlace['valve']): number | undefined {
  const { lobeLift, valveLift, lash } = card[side];
  if (card.assumedRatio !== undefined) return card.assumedRatio;
  if (lobeLift === undefined || valveLift === undefined || (lash ?? 0) > 0) return undefined;
  return valveLift / lobeLift;
}

export interface BeforeAndAfter {
  readonly before?: ChangeRatio;
  readonly after?: ChangeRatio;
}

/**
 * The ratios before and after, each from the best that is known of it.
 *
 * With a planned ratio, after is the planned arm: measured where it was, else as it is sold; before is what is fitted:
 * measured, sold as, or the card's. Without one, after is the arm on the valve and before what the card assumes.
 */
export function beforeAndAfter(
  evidence: Evidence,
  valve: ValvePlace['valve'],
  ratios: readonly ValveRatio[],
): BeforeAndAfter {
  const { planned, soldAs } = evidence.rockers;
  const read = (arms: 'planned' | 'fitted') => {
    const best = bestOf(ratios.filter((ratio) => armsOf(ratio, evidence) === arms));
    return best === undefined ? undefined : measured(best);
  };
  const card = cardRatio(evidence, valve);
  const assumed = card === undefined ? undefined : ofCard(card);
  const sold = soldAs === undefined ? undefined : notMeasured('sold-as', soldAs);
  const [before, after] =
    planned === undefined
      ? [assumed, read('fitted') ?? sold]
      : [
          read('fitted') ?? (same(soldAs, planned) ? undefined : sold) ?? assumed,
          read('planned') ?? notMeasured('planned', planned),
        ];
  return { ...defined({ before, after }) };
}
