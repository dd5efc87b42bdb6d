import { GOAL_PLANS, type Goal, type GoalPlan } from '../../shared/goals.ts';
import type { EventName } from '../assessment/all-events.ts';
import type { ReportPartName } from '../call/report-parts.ts';
import { CALL_TOLD } from '../call/tape-text.ts';
import type { Tell } from '../call/tell-events.ts';
import { adjusterStep } from './adjuster/step.ts';
import { buildStep } from './build/step.ts';
import { camStep } from './cam/step.ts';
import { consequencesStep } from './consequences/step.ts';
import { geometryStep } from './geometry/step.ts';
import { identifyStep } from './identify/step.ts';
import { notesStep } from './notes/step.ts';
import { partsStep } from './parts/step.ts';
import { ratioStep } from './ratio/step.ts';
import { sheetStep } from './sheet/step.ts';
import { timingStep } from './timing/step.ts';
import { triageStep } from './triage/step.ts';

/** The steps of a call in their order. A person opens whichever they want, whenever they want. */
export const STEPS = [
  triageStep,
  buildStep,
  camStep,
  partsStep,
  identifyStep,
  ratioStep,
  sheetStep,
  consequencesStep,
  geometryStep,
  timingStep,
  adjusterStep,
  notesStep,
] as const;

export type StepName = (typeof STEPS)[number]['name'];

/** The line of every event on the tape: one that no step tells does not compile. */
export const TOLD: Readonly<Record<EventName, Tell>> = {
  ...CALL_TOLD,
  ...triageStep.told,
  ...partsStep.told,
  ...identifyStep.told,
  ...ratioStep.told,
  ...sheetStep.told,
  ...consequencesStep.told,
  ...geometryStep.told,
  ...adjusterStep.told,
  ...notesStep.told,
};

/** The plans of all goals, as far as they name steps and parts of the report. */
export const PLANS: Readonly<Record<Goal, GoalPlan<StepName, ReportPartName>>> = GOAL_PLANS;

/** In this order the call asks for what the answer waits for. */
export const ASKED: readonly StepName[] = [
  'triage',
  'identify',
  'parts',
  'cam',
  'ratio',
  'build',
  'sheet',
  'consequences',
  'notes',
];
