import { defined } from '../../../shared/defined.ts';
import { speaking } from '../../../shared/quantities/spoken-units.ts';
import { planOf } from '../../../shared/schemas/goals.ts';
import type { Assessment, NextAction } from './assessment.ts';
import { nextOfChange } from './change/next-of-change.ts';
import { makingOnce } from './common/once.ts';
import type { Evidence } from './evidence.ts';
import { whereTold } from './gear/measured-alone.ts';
import { notCovered } from './gear/not-covered.ts';
import { inOrderOf } from './headline-order.ts';
import { besideMarks, sumAgainNext } from './marks/beside-sum.ts';
import { nextOfMarks } from './marks/next-of-marks.ts';
import { type Lacking, lackingFor, missingOf, needsOf, stepNeeds } from './missing/missing.ts';
import { goalTold } from './next/goal-told.ts';
import { heldBack } from './next/held-back.ts';
import { nextOf } from './next/next.ts';
import { nextOfNoise } from './next/of-noise.ts';
import { withNextFirst } from './next/question-of-next.ts';
import { partNext } from './part/tell.ts';
import { detailsOf, notToRunOf, type PartsSaid, partsSaid, questionsOf } from './parts-said.ts';
import { prepared } from './prepared.ts';
import { nextOfSheet } from './sheet/next/next-of-sheet.ts';

/**
 * Everything that is said about a build, from what is known of it now.
 *
 * @param evidence everything on the record, in SI; see evidence.ts. The order of its lists says nothing.
 * @returns quantities, judgements, questions and explanations, what is next and what is missing, and the stops
 *
 * Validity: one build; no clock, and the same evidence gives the same assessment. The units change
 * the sentences alone.
 * Source: each part names the source of its own limits.
 */
export const assess = (evidence: Evidence): Assessment =>
  speaking(evidence.call.units ?? 'inch', () => makingOnce(() => assessed(prepared(evidence))));

type Told = Pick<Assessment, 'notToRun' | 'questions' | 'headlines'>;

/** The one thing worth most now: each part says what it asks for, and the goal of the call which goes first. */
function nextOfAll(
  evidence: Evidence,
  parts: PartsSaid,
  told: Told,
  needs: readonly Lacking[],
  lacking: readonly Lacking[],
): NextAction | undefined {
  const { closed, goal } = evidence.call;
  const { stop, sheet, part, noise, lash, marks, change, lifts, said } = parts;
  const plan = planOf(goal);
  return nextOf({
    ...told,
    closed,
    stop,
    lacking,
    atEnd: needs.filter(({ step, need }) => step === 'notes' && !need.have),
    explained: lifts.read.explained,
    plan,
    ofSheet: nextOfSheet(sheet.detail, sheet.questions, sheet.judgements),
    ofPart: plan.asks.includes('identify') ? partNext(part.detail, part.questions) : undefined,
    ofNoise: nextOfNoise(noise.detail, noise.contrary, noise.oil),
    mend: lash.work.mend[0] ?? (noise.detail.known.includes('lobe') ? undefined : lash.work.lookOn[0]),
    ofMarks: nextOfMarks(marks.detail, marks.questions) ?? sumAgainNext(said, marks.detail, evidence),
    ofChange: plan.asks.includes('consequences') ? nextOfChange(change.detail) : undefined,
  });
}

function assessed(evidence: Evidence): Assessment {
  const parts = partsSaid(evidence);
  const { said, stop, ratio, sheet, noise, lifts } = parts;
  const needs = needsOf(evidence, lifts.read.explained, noise.detail, parts.lash.work);
  const lacking = lackingFor(needs, evidence);
  const notToRun = notToRunOf(evidence, parts);
  const told: Told = {
    notToRun,
    questions: questionsOf(evidence, parts),
    headlines: goalTold(
      evidence,
      inOrderOf(evidence.call.goal, whereTold(evidence, besideMarks(said, parts.marks.detail, evidence)), {
        swaps: sheet.detail.swaps,
        stop,
        notToRun,
      }),
    ),
  };
  const next = nextOfAll(evidence, parts, told, needs, lacking);
  const whole: Assessment = {
    ...said,
    questions: withNextFirst(told.questions, next),
    explanations: ratio.explanations,
    remaining: ratio.remaining,
    ...defined({ next }),
    missing: missingOf(lacking),
    needs: stepNeeds(needs),
    stop,
    notToRun: told.notToRun,
    notCovered: notCovered(evidence),
    headlines: told.headlines,
    details: detailsOf(evidence, parts),
  };
  return stop.length > 0 ? heldBack(whole) : whole;
}
