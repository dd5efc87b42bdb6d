import type { ValveGear } from '../../../../shared/schemas/words.ts';
import type { StepName } from '../../../../shared/steps.ts';
import type { SheetKindName } from '../evidence.ts';

/** What an engine with this valve gear has no use for, and why. */
interface GearPlan {
  readonly steps: Readonly<Partial<Record<StepName, string>>>;
  readonly parts: readonly string[];
  readonly kinds: readonly SheetKindName[];
  /** What the steps ask of pushrod engines alone, by step and code. */
  readonly needs: readonly string[];
}

const NO_PUSHROD_KINDS = ['pushrod-to-head', 'slot-to-stud'] as const;
const PUSHROD_PARTS = [
  'pushrod-length',
  'stand-height',
  'linkage',
  'lifter-preload',
  'lash-hot-cold',
] as const;
const CHANGE =
  'What another ratio does is worked out for pushrod rockers alone; the gaps are read on the engine and stand on the sheet.';
const LOOSE =
  'A loose part is ranked by trunnion, roller and pushrod cup, and a part of this engine has no such set of them.';

/**
 * What does not apply, by valve gear.
 *
 * Source: how each valve gear is made, general knowledge from memory, no published source.
 */
export const GEAR_PLANS: Readonly<Record<ValveGear, GearPlan>> = {
  pushrod: { steps: {}, parts: ['follower-ratio', 'shims'], kinds: [], needs: [] },
  bucket: {
    steps: {
      parts: 'There is no rocker arm between cam and valve.',
      identify: LOOSE,
      ratio: 'Cam and bucket move alike: there is no ratio to read.',
      consequences: CHANGE,
      geometry: 'There is no tip that sweeps across the stem.',
    },
    parts: [...PUSHROD_PARTS, 'adjuster', 'follower-ratio'],
    kinds: [...NO_PUSHROD_KINDS, 'preload', 'rocker-to-retainer'],
    needs: [
      'build:mounting',
      'cam:assumed-ratio',
      'geometry:tip-mark',
      'geometry:least-sweep',
      'adjuster:turns',
      'adjuster:preload',
    ],
  },
  'finger-follower': {
    steps: { identify: LOOSE, consequences: CHANGE },
    parts: [...PUSHROD_PARTS, 'marks', 'roller-sweep', 'adjuster', 'shims'],
    kinds: [...NO_PUSHROD_KINDS, 'preload'],
    needs: [
      'build:mounting',
      'geometry:tip-mark',
      'geometry:least-sweep',
      'adjuster:turns',
      'adjuster:preload',
    ],
  },
  'cam-rocker': {
    steps: { identify: LOOSE, consequences: CHANGE },
    parts: [...PUSHROD_PARTS, 'marks', 'roller-sweep', 'shims'],
    kinds: [...NO_PUSHROD_KINDS, 'preload'],
    needs: ['build:mounting', 'geometry:tip-mark', 'geometry:least-sweep', 'adjuster:preload'],
  },
};
