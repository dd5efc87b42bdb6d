import { planOf } from '../../../../shared/schemas/goals.ts';
import type { AssessedQuestion, NotToRun } from '../assessment.ts';
import type { PartSaid } from '../common/part-said.ts';
import { forSide, plansOf } from '../common/plans.ts';
import type { ValveRatio, WithheldRatio } from '../common/valve-ratio.ts';
import type { Evidence } from '../evidence.ts';
import { figureQuestions } from '../figures/figures.ts';
import { doubtsOfReadings } from '../gaps/doubts.ts';
import { isOfGap, slipNeeds, slipOfGap } from '../gaps/gap-slip.ts';
import { questionsOfScan } from '../scans/questions.ts';
import { scanned } from '../scans/scanned.ts';
import { rowsOf } from '../sheet/rows/rows.ts';
import { ratioThenAsked } from './arms-asked.ts';
import { isMadeByRatio, seenByChange, withOtherArms } from './arms-of-gaps.ts';
import { closestAsked } from './closest-asked.ts';
import type { ChangeDetail } from './detail.ts';
import { gapCalculations } from './gap-calculations.ts';
import { gapOfPlanAsked } from './gap-of-plan.ts';
import { notUsedHeadlines, shortGaps, worstHeadlines } from './headlines.ts';
import { notKnownHeadline } from './not-known.ts';
import { plannedOnAsked } from './planned-on.ts';
import { pushrodPair } from './pushrod-read-with.ts';
import { putOnLaterAsked } from './put-on-later.ts';
import { readAgainstWorked, untilWorkedIsSure } from './read-against-worked.ts';
import { noChangeHeadlines, sameRatioHeadlines } from './same-ratio.ts';
import { shortBefore } from './short-before.ts';
import { soldThenAsked, withSoldThen } from './sold-then.ts';
import { type Spot, spotsOf } from './spots.ts';
import { springsAsked, untilSpringsAreSure } from './springs-bind.ts';
import { statedHeadlines } from './stated-lifts.ts';
import { studsTold } from './studs.ts';
import { calculatedJudgements } from './told.ts';
import { toldOnce } from './told-once.ts';
import { armsKnown, type PlannedSpot, workOut } from './work-out.ts';

/** Every spot with the first plan of its side, then with the next; without one, with what is on it. */
function plannedSpots(evidence: Evidence, spots: readonly Spot[]): PlannedSpot[] {
  const each = spots.map((spot) => {
    const seen = forSide(evidence, spot.side);
    const planned = plansOf(seen);
    return { seen, spot, plans: planned.length === 0 ? [undefined] : planned };
  });
  const most = Math.max(0, ...each.map(({ plans }) => plans.length));
  return Array.from({ length: most }, (_, at) => at).flatMap((at) =>
    each.flatMap(({ seen, spot, plans }) => (at < plans.length ? [{ seen, spot, plan: plans[at] }] : [])),
  );
}

/** A question that several plans raise is asked once. */
const onceById = (questions: readonly AssessedQuestion[]): AssessedQuestion[] => [
  ...new Map(questions.map((question) => [question.id, question])).values(),
];

/** What sheet and scans ask of the readings themselves. */
const askedOfReadings = (evidence: Evidence): AssessedQuestion[] => [
  ...doubtsOfReadings(evidence),
  ...(evidence.scans ?? [])
    .filter(({ standing }) => standing)
    .flatMap((scan) => questionsOfScan(scanned(scan), evidence)),
];

/** A reading of which a slip is asked is asked about by that: that it is more than comes out says nothing else. */
const isSlipFirst = (
  { question, isLess }: ReturnType<typeof readAgainstWorked>[number],
  evidence: Evidence,
): boolean =>
  !isLess &&
  question.answered === undefined &&
  evidence.sheet
    .filter(isOfGap)
    .some((entry) => question.restsOn.includes(entry.id) && slipNeeds(slipOfGap(evidence, entry)).length > 0);

interface ChangeSaid extends PartSaid<readonly ChangeDetail[]> {
  readonly notToRun: readonly NotToRun[];
}

/** What a ratio does on each valve: before and after, from card, sold-as, planned or measured ratios. */
export function changePart(
  read: Evidence,
  ratios: readonly ValveRatio[],
  withheld: readonly WithheldRatio[] = [],
): ChangeSaid {
  const evidence = seenByChange(withOtherArms(read));
  const calculations = gapCalculations();
  const spots = spotsOf(evidence, rowsOf(evidence), { ratios, withheld });
  const planned = plannedSpots(evidence, spots);
  const pairs = planned.flatMap((each) => pushrodPair(each.seen, armsKnown(each, ratios)) ?? []);
  const worked = planned.map((each) => workOut(each, { calculations, read: ratios, pairs }));
  const bare = worked.map(({ detail }) => detail);
  const ofSprings = springsAsked(evidence, bare);
  const ofWorked = readAgainstWorked(evidence, bare).filter((each) => !isSlipFirst(each, evidence));
  const sure = untilWorkedIsSure(untilSpringsAreSure(bare, ofSprings), ofWorked);
  const studs = studsTold(evidence, bare);
  const questions = onceById([
    ...ofSprings,
    ...ofWorked.map(({ question }) => question),
    ...(isMadeByRatio(read) ? soldThenAsked(read) : []),
    ...putOnLaterAsked(read),
    ...plannedOnAsked(withSoldThen(read)),
    ...(isMadeByRatio(read) ? gapOfPlanAsked(read) : []),
    ...closestAsked(evidence),
    ...worked.flatMap((each) => each.questions),
    ...ratioThenAsked(
      evidence,
      worked.flatMap((each) => each.asksRatio),
    ),
    ...studs.questions,
    ...bare.flatMap(({ gaps }) => gaps.flatMap(({ lashAsked }) => lashAsked ?? [])),
  ]);
  const details = toldOnce(
    worked.flatMap((each, index) => {
      const detail = sure[index];
      return detail === undefined ? [] : [{ ...each, detail }];
    }),
    studs.cautions,
  );
  const hanging = [
    ...[...questions, ...figureQuestions(evidence), ...askedOfReadings(evidence)].map((question) => ({
      question,
    })),
    ...ofWorked,
  ];
  const asked = planOf(evidence.call.goal).asks.includes('consequences');
  // What is not known is told where the call asks what a ratio does; elsewhere it is noise.
  const headlines = [
    ...worstHeadlines(details),
    ...studs.headlines,
    ...sameRatioHeadlines(details),
    ...(planOf(evidence.call.goal).isChange === true ? noChangeHeadlines(details) : []),
    ...notUsedHeadlines(details),
    ...(asked ? notKnownHeadline(details) : []),
  ];
  return {
    quantities: worked.flatMap(({ quantities }) => quantities),
    judgements: details.flatMap(calculatedJudgements),
    questions,
    stop: [],
    notToRun: [
      ...shortGaps(details, hanging),
      ...shortBefore(details, ofSprings, hanging),
      ...studs.notToRun,
    ],
    headlines: headlines.length > 0 || !asked ? headlines : statedHeadlines(read),
    detail: details,
  };
}
