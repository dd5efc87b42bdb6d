import type { Evidence } from '../../../server/mechanics/assessment/evidence.ts';
import { IN } from '../../../server/mechanics/kit/si.ts';
import { lobe, nothingKnown } from '../../mechanics/assessment/plain.ts';

/** A gap of the change as it is expected, in inches. */
export interface ExpectedGap {
  /** Which change, and which gap. */
  readonly key: string;
  readonly gap: string;
  readonly word?: 'clear' | 'close' | 'short';
  readonly value?: number;
  readonly low?: number;
  readonly high?: number;
  /** In whole. */
  readonly sentence?: string;
}

export interface ChangeCall {
  readonly said: string;
  readonly evidence: Evidence;
  readonly gaps?: readonly ExpectedGap[];
  /** Figures after the change: inches or pounds. */
  readonly figures?: readonly (readonly [key: string, name: string, value: number | undefined])[];
  /** Sentences that are said in whole: headlines, what is not to be fitted or run, stops, checks, adjusters, cautions. */
  readonly says?: readonly string[];
  /** Nothing that is said matches these. */
  readonly silent?: readonly RegExp[];
}

export const ENGINE: Evidence = {
  ...nothingKnown,
  call: { ...nothingKnown.call, goal: 'choose-ratio' },
  engine: { cylinders: 8, lifter: 'solid-flat', mounting: 'stud' },
  card: { assumedRatio: 1.5, intake: lobe(0.4, { lash: 0.02 }), exhaust: {} },
  rockers: { soldAs: 1.5, planned: 1.6 },
};
export const springs = (installed: number, solid: number, seal?: number): Evidence['springs'] => ({
  installedHeight: installed * IN,
  solidHeight: solid * IN,
  ...(seal === undefined ? {} : { retainerToSeal: seal * IN }),
});
export const verify = { ...nothingKnown.call, goal: 'verify-ratio' } as const;

/** A build that was read on 1 intake: lobe .350, lash .016 on the card. */
export const MEASURED: Evidence = {
  ...ENGINE,
  call: verify,
  card: { assumedRatio: 1.5, intake: lobe(0.35, { lash: 0.016 }), exhaust: {} },
  rockers: {},
  springs: springs(1.9, 1.15),
};
