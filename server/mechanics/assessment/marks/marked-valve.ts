import { defined } from '../../../../shared/defined.ts';
import { markAdvice, markInShort, markQuestions } from '../../tip-mark/mark-questions.ts';
import type { Mark, MarkContext, MarkQuestion } from '../../tip-mark/types.ts';
import type { AssessedQuestion, StopReason } from '../assessment.ts';
import type { ValveRatio } from '../change/input.ts';
import { asked } from '../common/asked.ts';
import { upperFirst, valveSubject } from '../common/said.ts';
import type { Evidence, LimitEvidence, TipMarkEvidence } from '../evidence.ts';
import type { MarkedValveDetail } from './detail.ts';
import { edgeStop, edges } from './edges.ts';
import { leastSweepOf } from './least-sweep.ts';
import { lengthOf } from './length-of.ts';
import { OVER_FIRST, overQuestions } from './length-told.ts';
import { inOneConvention, markOf, worstToBest } from './order.ts';

/** What follows from the lengths. */
const BY_LENGTH: ReadonlySet<string> = new Set([
  'mark-wide',
  'mark-off-centre',
  'length-moves-nothing',
  'marks-sides-swapped',
  'marks-contradict',
]);

export interface MarkedValve {
  readonly valve: MarkedValveDetail;
  readonly questions: readonly AssessedQuestion[];
  readonly stop: readonly StopReason[];
}

/** The marks of one valve, and those of the same valve on other cylinders. */
interface MarksOfValve {
  readonly own: readonly TipMarkEvidence[];
  readonly beside: readonly TipMarkEvidence[];
}

const markAsked = (
  { answers }: Evidence,
  found: MarkQuestion,
  mark: TipMarkEvidence,
  weight: 'strong' | 'weak',
): AssessedQuestion =>
  asked(
    { ...found, weight, restsOn: [mark.id] },
    { about: valveSubject(mark), step: 'geometry', among: mark.id, answers },
  );

/** What a mark is held to: how wide the sweep can be, the stem under it, and the engine. */
function contextOf(
  { engine, rockers }: Evidence,
  { value, arm, lift }: MarkedValveDetail['least'],
  stem: number | undefined,
  beside: readonly Mark[],
  limit: LimitEvidence,
): MarkContext {
  const follower = engine.gear === 'finger-follower';
  return {
    leastSweep: value,
    overLeast: limit.value,
    ...defined({ mounting: follower ? undefined : engine.mounting }),
    follower,
    arm,
    lift,
    ratio: rockers.soldAs,
    stem,
    beside,
  };
}

/** The marks with their lengths told in one way. `waits`: over what one was taken is asked before any length is told. */
function lengthsOf(evidence: Evidence, marks: readonly TipMarkEvidence[]) {
  const unsaid = overQuestions(marks, evidence);
  const { marks: oneWay, ...how } = inOneConvention(
    marks.map((mark) => {
      const chosen = unsaid.find((each) => each.mark === mark)?.chosen;
      return chosen === undefined ? mark : { ...mark, pushrodOver: chosen };
    }),
  );
  return {
    ...how,
    told: oneWay.map(markOf),
    waits: unsaid.some(({ chosen }) => chosen === undefined),
    questions: unsaid.map(({ question }) => question),
  };
}

/** Marks that run off the edge of the stem; the stem’s size may have been said with another of them. */
function offTheEdge(
  evidence: Evidence,
  marks: readonly TipMarkEvidence[],
  context: MarkContext,
  withStem: TipMarkEvidence | undefined,
) {
  return edges(marks, context).map(({ mark, found }) => {
    const question = markAsked(evidence, found, mark, 'strong');
    const sized = mark.stem === undefined && withStem !== undefined ? [withStem.id] : [];
    return { question, stop: edgeStop(mark, question, [...new Set([mark.id, ...sized])]) };
  });
}

/** What the marks of one valve tell, worst to best: the last is the one that is judged. */
export function markedValve(
  evidence: Evidence,
  { own, beside }: MarksOfValve,
  limit: LimitEvidence,
  ratios: readonly ValveRatio[],
): MarkedValve[] {
  const marks = worstToBest(own);
  const best = marks.at(-1);
  if (best === undefined) return [];
  const least = leastSweepOf(evidence, best, ratios);
  const withStem = best.stem === undefined ? own.find((mark) => mark.stem !== undefined) : best;
  const context = contextOf(evidence, least, withStem?.stem, beside.map(markOf), limit);
  const { told, over, bothWays, waits, questions: ofLengths } = lengthsOf(evidence, marks);
  const within = { ...context, over, bothWays };
  const advice = waits ? undefined : markAdvice(told, within);
  const ofMarks = markQuestions(told, within).filter(
    ({ code }) => code !== 'mark-at-the-edge' && !(waits && BY_LENGTH.has(code)),
  );
  const atEdge = offTheEdge(evidence, marks, context, withStem);
  const questions = [
    ...atEdge.map(({ question }) => question),
    ...ofLengths,
    ...ofMarks.map((found) => markAsked(evidence, found, best, 'weak')),
  ];
  return [
    {
      questions,
      stop: atEdge.map(({ stop }) => stop),
      valve: {
        cylinder: best.cylinder,
        valve: best.valve,
        marks,
        judgedId: best.id,
        alone: marks.length + beside.length === 1,
        follower: context.follower === true,
        least,
        ...(least.value === undefined ? {} : { lookAgainOver: least.value + limit.value }),
        ...defined({
          advice: advice === undefined ? undefined : upperFirst(advice),
          inShort: waits ? OVER_FIRST : markInShort(told, within),
          length: lengthOf(told, within, waits),
        }),
        questionIds: questions.map(({ id }) => id),
      },
    },
  ];
}
