import { PLANNED_RATIO, STATED_RATIO } from '../../kit/allowances.ts';
import { nominalSaid } from '../common/said.ts';
import { seatedOn } from '../common/seats.ts';
import type { Evidence, Side, ValvePlace } from '../evidence.ts';
import { markOn } from '../ratio/stamp.ts';
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

/** What the arm that sits on a valve is stamped as, where its mark can be read. */
export function stampedOn(evidence: Evidence, place: ValvePlace | undefined): Stated | undefined {
  const value = place === undefined ? undefined : markOn(evidence, seatedOn(evidence, place)?.id);
  return value === undefined
    ? undefined
    : { from: 'sold-as', value, said: `the ${nominalSaid(value)} stamped on it` };
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
export const onNow = (card: ChangeRatio | undefined): ChangeRatio | undefined =>
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

/** What the card works with, as a ratio to set others against. */
export function cardsRatio(evidence: Evidence, side: Side): ChangeRatio | undefined {
  const card = cardRatio(evidence, side);
  return card === undefined ? undefined : ofCard(card);
}
