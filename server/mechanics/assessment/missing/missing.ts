import { planOf } from '../../../../shared/schemas/goals.ts';
import { STEP_NAMES, type StepName } from '../../../../shared/steps.ts';
import type { Missing, StepNeed } from '../assessment.ts';
import { upperFirst } from '../common/said.ts';
import type { Evidence } from '../evidence.ts';
import { gearDetail, planOfGear } from '../gear/gear.ts';
import type { LashWork } from '../lash/work.ts';
import type { NoiseDetail } from '../noise/detail.ts';
import type { GroupExplained } from '../ratio/compared/explain.ts';
import { valveRatios } from '../ratio/told/valve-ratios.ts';
import type { Need } from './need.ts';
import { ofAdjuster } from './of-adjuster.ts';
import { ofBuild, ofCam, ofTriage } from './of-build.ts';
import { ofConsequences } from './of-consequences.ts';
import { ofGeometry } from './of-geometry.ts';
import { isMeasuredChange, ofMeasuredChange } from './of-measured-change.ts';
import { ofNoise } from './of-noise.ts';
import { ofNotes } from './of-notes.ts';
import { ofIdentify, ofParts } from './of-parts.ts';
import { ofRatio } from './of-ratio.ts';
import { ofScan } from './of-scan.ts';
import { ofSheet } from './of-sheet.ts';
import { ofTiming } from './of-timing.ts';

/** What each step asks for. A step that is left out does not compile. */
const NEEDS: Readonly<
  Record<
    StepName,
    (
      evidence: Evidence,
      explained: readonly GroupExplained[],
      noise: NoiseDetail,
      lash: LashWork,
    ) => readonly Need[]
  >
> = {
  triage: ofTriage,
  build: ofBuild,
  cam: ofCam,
  parts: ofParts,
  identify: ofIdentify,
  // A bucket has no ratio, also where lifts were read as if of one.
  ratio: (evidence, explained) => (evidence.engine.gear === 'bucket' ? [] : ofRatio(evidence, explained)),
  sheet: (evidence) => (isMeasuredChange(evidence) ? ofMeasuredChange(evidence) : ofSheet(evidence)),
  scan: ofScan,
  consequences: (evidence, explained) => ofConsequences(evidence, valveRatios(explained).length > 0),
  geometry: ofGeometry,
  timing: ofTiming,
  adjuster: (evidence, _, noise, lash) => ofAdjuster(evidence, noise, lash),
  noise: (evidence, _explained, noise) => ofNoise(evidence, noise),
  notes: ofNotes,
};

export interface Lacking {
  readonly step: StepName;
  readonly need: Need;
}

/** The steps that the goal asks of this engine. */
const asksOf = (evidence: Evidence): readonly StepName[] =>
  isMeasuredChange(evidence) ? ['sheet'] : planOf(evidence.call.goal).asks;

/** All that is asked for, step by step; the answer waits only for what the goal of the call is about. */
export function needsOf(
  evidence: Evidence,
  explained: readonly GroupExplained[],
  noise: NoiseDetail,
  lash: LashWork,
): Lacking[] {
  const { waitsFor } = planOf(evidence.call.goal);
  const asks = asksOf(evidence);
  const counts = (step: StepName): boolean => step === 'triage' || step === 'notes' || asks.includes(step);
  const without = new Set(gearDetail(evidence).steps.map(({ step }) => step));
  const notAsked = new Set(planOfGear(evidence).needs);
  return STEP_NAMES.filter((step) => !without.has(step)).flatMap((step) =>
    NEEDS[step](evidence, explained, noise, lash)
      .filter(({ code }) => !notAsked.has(`${step}:${code}`))
      .map((need) => ({
        step,
        need: { ...need, must: counts(step) && (need.must || (waitsFor.includes(step) && need.forAnswer)) },
      })),
  );
}

/** What the goal of the call still lacks, in the order of its plan; the first question of the call goes before all. */
export function lackingFor(needs: readonly Lacking[], evidence: Evidence): Lacking[] {
  const steps: readonly StepName[] = ['triage', ...asksOf(evidence)];
  return steps.flatMap((step) => needs.filter((each) => each.step === step && !each.need.have));
}

const said = ({ step, need }: Lacking): Missing => ({
  id: `missing:${step}:${need.code}`,
  step,
  sentence: `${upperFirst(need.what)}.`,
  must: need.must,
});

export const missingOf = (lacking: readonly Lacking[]): Missing[] => lacking.map(said);

export const stepNeeds = (needs: readonly Lacking[]): StepNeed[] =>
  needs.map(({ step, need }) => ({
    id: `need:${step}:${need.code}`,
    step,
    what: need.what,
    have: need.have,
    must: need.must,
  }));
