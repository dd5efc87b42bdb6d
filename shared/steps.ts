/** The steps of a call by their names, in their order. */
export const STEP_NAMES = [
  'triage',
  'build',
  'cam',
  'parts',
  'identify',
  'ratio',
  'sheet',
  'consequences',
  'geometry',
  'timing',
  'adjuster',
  'notes',
] as const;

export type StepName = (typeof STEP_NAMES)[number];
