import { defined } from '../../../../shared/defined.ts';
import { plansOf } from '../common/plans.ts';
import { sameRatio } from '../common/same-ratio.ts';
import { isOffSince } from '../common/seats.ts';
import type { Evidence, ValvePlace } from '../evidence.ts';
import { markOn } from '../ratio/claims/stamp.ts';
import { isFitted, soldRatio } from './stated-ratios.ts';

/** What is known of the arm that something was read with. */
interface ReadWith extends ValvePlace {
  readonly armId?: string;
  /** Of an arm that nobody named, and that came off for the one on record. */
  readonly comesOff?: true;
  /** What the arms that are off since were sold as, where it was one of them. */
  readonly soldAsThen?: number;
}

/** Whose arms those are; of arms that are to be fitted alone neither `on` nor `off` is so. */
export interface WhoseArms {
  /** Those of this plan. */
  readonly plan?: number;
  /** Those that the engine has. */
  readonly on: boolean;
  /** Those that it had. */
  readonly off: boolean;
}

/**
 * Of which plan the arms are that something was read with, and whether they are on or off since: by the mark on the arm,
 * by what they were sold as then, by what they are sold as. Nothing where others are planned and nothing tells.
 */
export function whoseArms(read: ReadWith, evidence: Evidence): WhoseArms | undefined {
  const { armId, comesOff, soldAsThen } = read;
  const off = soldAsThen !== undefined || isOffSince(read, evidence);
  const ofEngine = { on: !off, off };
  const plans = plansOf(evidence);
  if (plans.length === 0 || comesOff === true) return ofEngine;
  const told = markOn(evidence, armId) ?? soldAsThen ?? soldRatio(evidence)?.value;
  if (told === undefined) return undefined;
  return {
    ...(isFitted(evidence, told) ? ofEngine : { on: false, off: false }),
    ...defined({ plan: plans.find((plan) => sameRatio(plan, told)) }),
  };
}

/** Of the arms that a ratio after the change is told of: those of the plan; without one, those that are on. */
export function isOfAfter(read: ReadWith, plan: number | undefined, evidence: Evidence): boolean {
  const whose = whoseArms(read, evidence);
  return plan === undefined ? whose?.on === true : whose?.plan === plan;
}
