import type { Missing, StepName } from '../assessment.ts';
import { upperFirst } from '../common/said.ts';
import type { Evidence } from '../evidence.ts';
import type { GroupExplained } from '../ratio/explain.ts';
import type { GoalName } from '../words.ts';
import type { Need } from './need.ts';
import { ofBuild, ofCam, ofTriage } from './of-build.ts';
import { ofIdentify, ofParts } from './of-parts.ts';
import { ofRatio } from './of-ratio.ts';
import { ofAdjuster, ofConsequences, ofGeometry, ofSheet, ofTiming } from './of-rest.ts';

/** The steps that a goal is about, in the order of its plan; the first question of the call goes before all. */
const PLAN: Readonly<Record<GoalName, readonly StepName[]>> = {
  identify: ['identify'],
  'verify-ratio': ['parts', 'cam', 'ratio'],
  'choose-ratio': ['cam', 'parts', 'build', 'consequences'],
  'clearances-after-a-change': ['parts', 'cam', 'build', 'consequences'],
  geometry: ['geometry'],
  'cam-timing': ['cam', 'timing'],
  adjuster: ['adjuster'],
  'noise-or-failure': ['adjuster', 'sheet'],
  'returned-part': ['parts', 'identify'],
};

function needsOf(step: StepName, evidence: Evidence, explained: readonly GroupExplained[]): Need[] {
  switch (step) {
    case 'triage':
      return ofTriage(evidence);
    case 'build':
      return ofBuild(evidence);
    case 'cam':
      return ofCam(evidence);
    case 'parts':
      return ofParts(evidence);
    case 'identify':
      return ofIdentify(evidence);
    case 'ratio':
      return ofRatio(explained);
    case 'sheet':
      return ofSheet(evidence);
    case 'consequences':
      return ofConsequences(
        evidence,
        explained.some(({ result }) => result !== undefined),
      );
    case 'geometry':
      return ofGeometry(evidence);
    case 'timing':
      return ofTiming(evidence);
    case 'adjuster':
      return ofAdjuster(evidence);
    case 'notes':
      return [];
  }
}

export interface Lacking {
  readonly step: StepName;
  readonly need: Need;
}

/** What the goal of the call still lacks, in the order of its plan. */
export function lackingFor(evidence: Evidence, explained: readonly GroupExplained[]): Lacking[] {
  const steps: readonly StepName[] = ['triage', ...PLAN[evidence.call.goal]];
  return steps.flatMap((step) =>
    needsOf(step, evidence, explained)
      .filter(({ have }) => !have)
      .map((need) => ({ step, need })),
  );
}

export const missingOf = (lacking: readonly Lacking[]): Missing[] =>
  lacking.map(({ step, need }) => ({
    id: `missing:${step}:${need.code}`,
    step,
    sentence: `${upperFirst(need.what)}.`,
    must: need.must,
  }));
