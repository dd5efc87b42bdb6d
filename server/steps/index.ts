import { STEP_NAMES, type StepName } from '../../shared/steps.ts';
import type { Step } from '../call/step.ts';
import { CALL_TOLD } from '../call/tape-text.ts';
import type { Tell } from '../call/tell-events.ts';
import type { EventName } from '../records/whole-build/record-parts.ts';
import { adjusterStep } from './adjuster/step.ts';
import { buildStep } from './build/step.ts';
import { camStep } from './cam/step.ts';
import { consequencesStep } from './consequences/step.ts';
import { geometryStep } from './geometry/step.ts';
import { identifyStep } from './identify/step.ts';
import { noiseStep } from './noise/step.ts';
import { notesStep } from './notes/step.ts';
import { partsStep } from './parts/step.ts';
import { ratioStep } from './ratio/step.ts';
import { scanStep } from './scan/step.ts';
import { sheetStep } from './sheet/step.ts';
import { timingStep } from './timing/step.ts';
import { triageStep } from './triage/step.ts';

/** Every name has its step: one that is left out does not compile. */
const BY_NAME: { readonly [Name in StepName]: Step<Name> } = {
  triage: triageStep,
  build: buildStep,
  cam: camStep,
  parts: partsStep,
  identify: identifyStep,
  ratio: ratioStep,
  sheet: sheetStep,
  scan: scanStep,
  consequences: consequencesStep,
  geometry: geometryStep,
  timing: timingStep,
  adjuster: adjusterStep,
  noise: noiseStep,
  notes: notesStep,
};

/** The steps of a call in their order. A person opens whichever they want, whenever they want. */
export const STEPS: readonly Step[] = STEP_NAMES.map((name) => BY_NAME[name]);

/** The line of every event on the tape: one that no step tells does not compile. */
export const TOLD: Readonly<Record<EventName, Tell>> = {
  ...CALL_TOLD,
  ...triageStep.told,
  ...partsStep.told,
  ...identifyStep.told,
  ...ratioStep.told,
  ...sheetStep.told,
  ...scanStep.told,
  ...consequencesStep.told,
  ...geometryStep.told,
  ...adjusterStep.told,
  ...notesStep.told,
};

/** What the frame of a call is made from. */
export const CALL_STEPS = { steps: STEPS, told: TOLD };
