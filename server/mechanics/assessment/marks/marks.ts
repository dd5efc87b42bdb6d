import { defined } from '../../../../shared/defined.ts';
import { SIDES } from '../../../../shared/sides.ts';
import { markAdvice, markInShort, markQuestions } from '../../tip-mark/mark-questions.ts';
import type { MarkQuestion } from '../../tip-mark/types.ts';
import type { AssessedQuestion, StopReason } from '../assessment.ts';
import type { ValveRatio } from '../change/input.ts';
import { asked } from '../common/asked.ts';
import { limitNamed } from '../common/limits.ts';
import type { PartSaid } from '../common/part-said.ts';
import { byId, byPlace, placeOf, upperFirst, valveSubject } from '../common/said.ts';
import type { Evidence, LimitEvidence, TipMarkEvidence } from '../evidence.ts';
import type { MarkedValveDetail, MarksDetail } from './detail.ts';
import { edgeStop, edges } from './edges.ts';
import { leastSweepOf } from './least-sweep.ts';
import { lengthOf } from './length-of.ts';
import { OVER_FIRST, overQuestions } from './length-told.ts';
import { inOneConvention, markOf, worstToBest } from './order.ts';
import { markHeadline, markJudgement, sweepQuantity } from './said.ts';

/** What follows from the lengths. */
const BY_LENGTH: ReadonlySet<string> = new Set([
  'mark-wide',
  'mark-off-centre',
  'length-moves-nothing',
  'marks-sides-swapped',
  'marks-contradict',
]);

interface Asked {
  readonly valve: MarkedValveDetail;
  readonly questions: readonly AssessedQuestion[];
  readonly stop: readonly StopReason[];
}

function valveOf(
  evidence: Evidence,
  own: readonly TipMarkEvidence[],
  beside: readonly TipMarkEvidence[],
  limit: LimitEvidence,
  ratios: readonly ValveRatio[],
): Asked[] {
  const marks = worstToBest(own);
  const best = marks.at(-1);
  if (best === undefined) return [];
  const about = valveSubject(best);
  const least = leastSweepOf(evidence, best, ratios);
  const withStem = best.stem === undefined ? own.find((mark) => mark.stem !== undefined) : best;
  const stem = withStem?.stem;
  const follower = evidence.engine.gear === 'finger-follower';
  const context = {
    leastSweep: least.value,
    overLeast: limit.value,
    ...defined({ mounting: follower ? undefined : evidence.engine.mounting }),
    follower,
    arm: least.arm,
    lift: least.lift,
    ratio: evidence.rockers.soldAs,
    stem,
    beside: beside.map(markOf),
  };
  const ask = (found: MarkQuestion, mark: TipMarkEvidence, weight: 'strong' | 'weak') =>
    asked(
      { ...found, weight, restsOn: [mark.id] },
      { about, step: 'geometry', among: mark.id, answers: evidence.answers },
    );
  const unsaid = overQuestions(marks, evidence);
  const waits = unsaid.some(({ chosen }) => chosen === undefined);
  const oneWay = inOneConvention(
    marks.map((mark) => {
      const chosen = unsaid.find((each) => each.mark === mark)?.chosen;
      return chosen === undefined ? mark : { ...mark, pushrodOver: chosen };
    }),
  );
  const told = oneWay.marks.map(markOf);
  const within = { ...context, over: oneWay.over, bothWays: oneWay.bothWays };
  const advice = waits ? undefined : markAdvice(told, within);
  const questions = [
    ...unsaid.map(({ question }) => question),
    ...markQuestions(told, within)
      .filter(({ code }) => code !== 'mark-at-the-edge' && !(waits && BY_LENGTH.has(code)))
      .map((found) => ask(found, best, 'weak')),
  ];
  const atEdge = edges(marks, context).map(({ mark, found }) => ({
    mark,
    question: ask(found, mark, 'strong'),
  }));
  const all = [...atEdge.map(({ question }) => question), ...questions];
  return [
    {
      questions: all,
      stop: atEdge.map(({ mark, question }) =>
        edgeStop(mark, question, [
          ...new Set([mark.id, ...(mark.stem === undefined && withStem !== undefined ? [withStem.id] : [])]),
        ]),
      ),
      valve: {
        cylinder: best.cylinder,
        valve: best.valve,
        marks,
        judgedId: best.id,
        alone: marks.length + beside.length === 1,
        follower,
        least,
        ...(least.value === undefined ? {} : { lookAgainOver: least.value + limit.value }),
        ...defined({
          advice: advice === undefined ? undefined : upperFirst(advice),
          inShort: waits ? OVER_FIRST : markInShort(told, within),
          length: lengthOf(told, within, waits),
        }),
        questionIds: all.map(({ id }) => id),
      },
    },
  ];
}

/** The tip marks of each valve against the least sweep that its lift and arm can have. */
export function marksPart(evidence: Evidence, ratios: readonly ValveRatio[]): PartSaid<MarksDetail> {
  const limit = limitNamed(evidence, 'sweep-over-least');
  const standing = evidence.tipMarks
    .filter((mark) => mark.standing)
    .toSorted((a, b) => byPlace(a, b) || byId(a, b));
  const places = [...new Set(standing.map(placeOf))];
  const found = places.flatMap((place) => {
    const own = standing.filter((mark) => placeOf(mark) === place);
    const beside = standing.filter(({ cylinder, valve }) =>
      own.some((mark) => mark.valve === valve && mark.cylinder !== cylinder),
    );
    return valveOf(evidence, own, beside, limit, ratios);
  });
  return {
    quantities: found.flatMap(({ valve }) => sweepQuantity(valve)),
    judgements: found.flatMap(({ valve }) => markJudgement(valve, limit)),
    questions: found.flatMap(({ questions }) => questions),
    stop: found.flatMap(({ stop }) => stop),
    headlines: found.flatMap(({ valve }) => markHeadline(valve, limit)),
    detail: {
      limit,
      valves: found.map(({ valve }) => valve),
      leastOfSides: SIDES.map((side) => ({ side, least: leastSweepOf(evidence, { valve: side }, ratios) })),
    },
  };
}
