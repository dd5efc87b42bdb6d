import { defined } from '../../../shared/defined.ts';
import { speaking } from '../../../shared/quantities/spoken-units.ts';
import { planOf } from '../../../shared/schemas/goals.ts';
import type { Assessment } from './assessment.ts';
import { withOtherArms } from './change/arms-of-gaps.ts';
import { changePart } from './change/change.ts';
import { nextOfChange } from './change/next-of-change.ts';
import { withPlannedOn } from './change/planned-on.ts';
import { withPutOnLater } from './change/put-on-later.ts';
import { withSoldThen } from './change/sold-then.ts';
import type { PartSaid } from './common/part-said.ts';
import { contactQuestions } from './contact-asked.ts';
import type { Details } from './details.ts';
import type { Evidence } from './evidence.ts';
import { figureQuestions } from './figures/figures.ts';
import { pushrodsPart } from './figures/pushrods.ts';
import { gearDetail, gearQuestions } from './gear/gear.ts';
import { forChange, whereTold } from './gear/measured-alone.ts';
import { noSuchValves } from './gear/no-such-valve.ts';
import { notCovered } from './gear/not-covered.ts';
import { inOrderOf } from './headline-order.ts';
import { lashPart } from './lash/lash.ts';
import { marksPart } from './marks/marks.ts';
import { nextOfMarks } from './marks/next-of-marks.ts';
import { lackingFor, missingOf, needsOf, stepNeeds } from './missing/missing.ts';
import { heldBack } from './next/held-back.ts';
import { nextOf } from './next/next.ts';
import { withNextFirst } from './next/question-of-next.ts';
import { nextOfNoise } from './noise/next-of-noise.ts';
import { noisePart } from './noise/noise.ts';
import { armMarkQuestions, withPartMarks } from './part/arm-marks.ts';
import { partPart } from './part/part.ts';
import { partNext } from './part/tell.ts';
import { ratioKnown, ratioPart, ratioRead } from './ratio/ratio.ts';
import { ratiosWithheld, valveRatios } from './ratio/valve-ratios.ts';
import { withScans } from './scans/as-gap.ts';
import { scansPart } from './scans/scans.ts';
import { waitingForSheet } from './sheet/against-set-ups.ts';
import { guessedShort } from './sheet/guessed.ts';
import { heldRatios } from './sheet/held.ts';
import { nextOfSheet } from './sheet/next/next-of-sheet.ts';
import { sheetPart } from './sheet/sheet.ts';
import { shortBefore } from './sheet/short-before.ts';
import { ratiosOfSheet } from './sheet/valve-ratios.ts';
import { liftedGaps, stopReasons } from './stop.ts';
import { timingPart } from './timing/timing.ts';
import { workingsPart } from './workings/workings.ts';

/** All that the parts say, each list in the order of the parts. */
const together = (parts: readonly PartSaid<unknown>[]) => ({
  quantities: parts.flatMap(({ quantities }) => quantities),
  judgements: parts.flatMap(({ judgements }) => judgements),
  questions: parts.flatMap(({ questions }) => questions),
  headlines: parts.flatMap(({ headlines }) => headlines),
});

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
  speaking(evidence.call.units ?? 'inch', () => assessed(withPutOnLater(withPartMarks(evidence))));

function assessed(evidence: Evidence): Assessment {
  const isPushrod = forChange(evidence) === evidence;
  const gapped = withOtherArms(withScans(evidence));
  // A ratio is told of the arm that it was read of, whatever is on now.
  const ofThen = withPlannedOn(withSoldThen(evidence));
  const setUps = ratioKnown(ofThen);
  const sheet = sheetPart(withSoldThen(gapped), setUps.known);
  const { swaps } = sheet.detail;
  const known = waitingForSheet(setUps.known, sheet.questions);
  const read = ratioRead(ofThen, { ...setUps, known }, swaps);
  const scans = scansPart(gapped);
  const ofSetUps = valveRatios(read.explained);
  const ratios =
    evidence.engine.gear === 'bucket'
      ? []
      : [...ofSetUps, ...ratiosOfSheet(evidence, sheet.detail, sheet.quantities, ofSetUps)];
  const change = isPushrod
    ? changePart(gapped, ratios, [
        ...ratiosWithheld(ofThen, read.explained),
        ...heldRatios(evidence, sheet.detail),
      ])
    : changePart(forChange(gapped), []);
  const marks = marksPart(evidence, ratios);
  const lash = lashPart(evidence);
  const timing = timingPart(evidence);
  const workings = workingsPart(evidence);
  const part = partPart(evidence);
  const raisedElsewhere = [...lash.questions, ...marks.questions];
  const noise = noisePart(evidence, { lash: lash.detail, sheet: sheet.detail, raised: raisedElsewhere });
  const pushrods = pushrodsPart(evidence);
  const others = [sheet, scans, change, marks, timing, lash, pushrods, workings, part, noise];
  const raised = others.flatMap((each) => each.stop);
  const stop = stopReasons(evidence, raised);
  const ratio = ratioPart(ofThen, read, part.detail, stop);
  const notToRun = [
    ...change.notToRun,
    ...lash.notToRun,
    ...guessedShort(gapped),
    ...shortBefore(gapped),
    ...noise.notToRun,
    ...sheet.notToRun,
    ...liftedGaps(evidence, raised),
    ...ratio.notToRun,
  ];
  const said = together([ratio, ...others]);
  const needs = needsOf(evidence, read.explained, noise.detail);
  const lacking = lackingFor(needs, evidence);
  const { closed, goal } = evidence.call;
  const ofPart = planOf(goal).asks.includes('identify') ? partNext(part.detail, part.questions) : undefined;
  const atEnd = needs.filter(({ step, need }) => step === 'notes' && !need.have);
  const questions = [
    ...said.questions,
    ...gearQuestions(evidence),
    ...figureQuestions(evidence),
    // Lifting a stop does not say which of the two is so.
    ...contactQuestions(evidence, [
      ...stop,
      ...raised.filter(({ id }) => stop.every((each) => each.id !== id)),
    ]),
    ...noSuchValves(evidence),
    ...armMarkQuestions(evidence),
  ];
  const ofSheet = nextOfSheet(sheet.detail, sheet.questions, sheet.judgements);
  const ofNoise = nextOfNoise(noise.detail);
  const ofChange = planOf(goal).asks.includes('consequences') ? nextOfChange(change.detail) : undefined;
  const { explained } = read;
  const headlines = inOrderOf(goal, whereTold(evidence, said.headlines), swaps);
  const plan = planOf(goal);
  const next = nextOf({
    closed,
    stop,
    notToRun,
    lacking,
    atEnd,
    questions,
    explained,
    headlines,
    plan,
    ofSheet,
    ofPart,
    ofNoise,
    ofMarks: nextOfMarks(marks.detail, marks.questions),
    ofChange,
  });
  const details: Details = {
    gear: gearDetail(evidence),
    setUps: ratio.detail,
    sheet: sheet.detail,
    scans: scans.detail,
    change: change.detail,
    marks: marks.detail,
    lash: lash.detail,
    timing: timing.detail,
    workings: workings.detail,
    noise: noise.detail,
    parts: part.detail,
  };
  const whole: Assessment = {
    ...said,
    questions: withNextFirst(questions, next),
    explanations: ratio.explanations,
    remaining: ratio.remaining,
    ...defined({ next }),
    missing: missingOf(lacking),
    needs: stepNeeds(needs),
    stop,
    notToRun,
    notCovered: notCovered(evidence),
    headlines,
    details,
  };
  return stop.length > 0 ? heldBack(whole) : whole;
}
