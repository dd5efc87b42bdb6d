import { defined } from '../../../../../shared/defined.ts';
import { sideOfValve } from '../../../../../shared/schemas/words.ts';
import { nominalSaid } from '../../common/said.ts';
import type { Evidence, ValvePlace } from '../../evidence.ts';
import { isOfPlan } from './marks.ts';
import { isRatio } from './stamp.ts';

/** The ratio that a box label names, where it names one. It is copied nowhere: it only helps to ask. */
export function ratioOnBox(boxLabel: string): number | undefined {
  const found = [...boxLabel.matchAll(/(?<![\d.,])\d[.,]\d{1,3}(?![\d.,])/g)].map(([text]) =>
    Number(text.replace(',', '.')),
  );
  const [ratio, ...others] = [...new Set(found.filter(isRatio))];
  return others.length === 0 ? ratio : undefined;
}

export interface HeldAs {
  readonly ratio: number;
  /** `the 1.6 on its box` */
  readonly said: string;
}

const of = (ratio: number | undefined, said: (name: string) => string): HeldAs[] =>
  ratio === undefined ? [] : [{ ratio, said: said(nominalSaid(Number(ratio.toFixed(2)))) }];

/** Ratios that an arm was sold as: by the order, and by its box. */
export function soldHeld(
  evidence: Evidence,
  { armId, soldAsThen }: { readonly armId?: string; readonly soldAsThen?: number },
): HeldAs[] {
  const { rockers, arms } = evidence;
  const was = (name: string) =>
    isOfPlan(evidence, soldAsThen) ? `the planned ${name}` : `the ${name} it was sold as when it was read`;
  const box = ratioOnBox(arms.find(({ id }) => id === armId)?.boxLabel ?? '');
  return [
    ...(soldAsThen === undefined
      ? of(rockers.soldAs, (name) => `the ${name} it is sold as`)
      : of(soldAsThen, was)),
    ...of(box, (name) => `the ${name} on its box`),
  ];
}

/** Ratios that something else on record holds the arm to be, each with its name. */
export function otherwiseHeld(
  evidence: Evidence,
  { valve, armId, soldAsThen }: ValvePlace & { readonly armId?: string; readonly soldAsThen?: number },
): HeldAs[] {
  const { lobeLift, valveLift } = evidence.card[sideOfValve(valve)];
  const ofLifts = lobeLift === undefined || valveLift === undefined ? undefined : valveLift / lobeLift;
  const ofCard = evidence.card.assumedRatio ?? ofLifts;
  return [
    ...soldHeld(evidence, defined({ armId, soldAsThen })),
    ...of(ofCard, (name) => `the ${name} of the card`),
  ];
}
