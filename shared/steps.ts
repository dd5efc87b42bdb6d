/** The steps of a call by their names, in their order. */
export const STEP_NAMES = [
  'triage',
  'build',
  'cam',
  'parts',
  'identify',
  'ratio',
  'sheet',
  'scan',
  'consequences',
  'geometry',
  'timing',
  'adjuster',
  'noise',
  'notes',
] as const;

export type StepName = (typeof STEP_NAMES)[number];

/** Parts of a call's report in their usual order; a goal may put some of them first. */
export const REPORT_PARTS = [
  'ratio',
  'sheet',
  'scans',
  'consequences',
  'part',
  'marks',
  'lash',
  'noise',
  'workings',
  'photographs',
  'notes',
  'arms',
  'build',
] as const;

export type ReportPartName = (typeof REPORT_PARTS)[number];
