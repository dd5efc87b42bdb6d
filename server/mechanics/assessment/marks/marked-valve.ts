import { defined } from '../../../../shared/defined.ts';
import { isLike, wideBy } from '../../tip-mark/called-wide.ts';
import { markAdvice } from '../../tip-mark/mark-questions.ts';
import type { Mark, MarkContext } from '../../tip-mark/types.ts';
import type { AssessedQuestion, StopReason } from '../assessment.ts';
import { inDoubt } from '../common/asked.ts';
import { chosenOf } from '../common/chosen.ts';
import { limitNamed } from '../common/limits.ts';
import { upperFirst } from '../common/said.ts';
import type { ValveRatio } from '../common/valve-ratio.ts';
import type { Evidence, LimitEvidence, TipMarkEvidence } from '../evidence.ts';
import { answerOf } from './answers.ts';
import { askedOfMarks, lengthsOf, markAsked } from './asked-of.ts';
import { cannotBe } from './cannot-be.ts';
import { contextOf, isOverhead } from './context-of.ts';
import { counted } from './counted.ts';
import type { LeastSweepDetail, MarkedValveDetail } from './detail.ts';
import { edgeStop, edges } from './edges.ts';
import { beforeLengths, type FirstOfMark, firstOf } from './first-of-mark.ts';
import { leastSweepOf } from './least-sweep.ts';
import { heightOf, lengthOf } from './length-of.ts';
import { markOf, squareFirst, worstToBest } from './order.ts';
import { isNearEdge, stemAsked } from './stem.ts';

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

/** Marks that run off the edge of the stem; the stem’s size may have been said with another of them, or as an answer. */
function offTheEdge(
  evidence: Evidence,
  marks: readonly TipMarkEvidence[],
  context: MarkContext,
  withStem: TipMarkEvidence | undefined,
) {
  return edges(marks, context).map(({ mark, found }) => {
    const { question } = markAsked(evidence, found, mark, [mark]);
    const sized = mark.stem === undefined && withStem !== undefined ? [withStem.id] : [];
    const close = found.asks === 'close';
    // So close that ink does not tell: only who looked says that it runs off.
    if (close && chosenOf(question) !== 'found') return { question, close };
    return { question, close, stop: edgeStop(mark, question, [...new Set([mark.id, ...sized])]) };
  });
}

/** Worst to best, the one that is out of line sideways as the best, unless it was answered that it is left so. */
function ordered(evidence: Evidence, kept: readonly TipMarkEvidence[], context: MarkContext) {
  const marks = worstToBest(kept);
  const first = isOverhead(evidence) ? marks : squareFirst(marks);
  const [sideways] = askedOfMarks(
    evidence,
    first,
    first.map((mark) => markOf(mark)),
    context,
    true,
  ).filter(({ asks }) => asks === 'sideways');
  return sideways !== undefined && answerOf(sideways)?.code === 'left' ? marks : first;
}

/** What is asked of marks that count, with the way they are told. */
function readOf(evidence: Evidence, kept: readonly TipMarkEvidence[], context: MarkContext) {
  const marks = ordered(evidence, kept, context);
  const { told, over, bothWays, waits, questions } = lengthsOf(evidence, marks);
  const within = { ...context, over, bothWays };
  return { marks, told, within, waits, ofLengths: questions };
}

/** What the mark that is judged was compared with, and whether that calls it wide. */
const comparedOf = (
  told: readonly Mark[],
  context: MarkContext,
): Pick<MarkedValveDetail, 'alone' | 'wideBy'> => {
  const judged = told.at(-1);
  if (judged === undefined) return { alone: true };
  const others = [...told.slice(0, -1), ...context.beside];
  return {
    ...defined({ wideBy: wideBy(judged, others, context) }),
    alone: !others.some((other) => isLike(judged, other)),
  };
};

/** The question that is first in a list and not answered. */
const openIn = (questions: readonly AssessedQuestion[]): AssessedQuestion | undefined =>
  questions.find(({ answered }) => answered === undefined);

/** What the marks of one valve tell, worst to best: the last is the one that is judged. */
export function markedValve(
  evidence: Evidence,
  { own, beside }: MarksOfValve,
  limit: LimitEvidence,
  ratios: readonly ValveRatio[],
): MarkedValve[] {
  const [any] = own;
  if (any === undefined) return [];
  const least: LeastSweepDetail = leastSweepOf(evidence, any, ratios);
  const asked = stemAsked(own, evidence);
  const withStem = own.find((mark) => mark.stem !== undefined);
  const stem = withStem?.stem ?? asked?.stem;
  const others = beside.map((mark) => markOf(mark, evidence.arms));
  const context = contextOf(evidence, least, stem, others);
  const askNow = (kept: readonly TipMarkEvidence[], hold = false) => {
    const read = readOf(evidence, kept, context);
    return askedOfMarks(evidence, read.marks, read.told, read.within, read.waits || hold);
  };
  const { kept, questions: ofCounted, apart } = counted(own, evidence, askNow);
  const { marks, told, within, ofLengths } = readOf(evidence, kept, context);
  const ofFigures = cannotBe(own, stem, evidence);
  const atEdge = offTheEdge(evidence, own, context, withStem);
  const before = beforeLengths({
    figure: ofFigures.find(inDoubt),
    edge: openIn(atEdge.flatMap(({ question, close }) => (close ? [question] : []))),
    stem: stem === undefined ? asked?.question : undefined,
    over: openIn(ofLengths),
    apart,
    noneCounts: kept.length === 0,
  });
  const ofMarks = askNow(kept, before !== undefined);
  const after = firstOf(evidence, ofMarks, told, within, beside);
  const best = marks.at(-1) ?? worstToBest(own).at(-1) ?? any;
  // Whatever the others say along the rocker waits until it is square.
  const sideways = marks.length > 1 && ofMarks.some(({ asks }) => asks === 'sideways');
  const advice =
    before === undefined && (after.answered || sideways) ? after.first?.said : markAdvice(told, within);
  const questions = [
    ...ofFigures,
    ...atEdge.map(({ question }) => question),
    ...(asked === undefined ? [] : [asked.question]),
    ...ofLengths,
    ...ofCounted,
    ...ofMarks.map(({ question }) => question),
  ];
  return [
    {
      questions,
      stop: atEdge.flatMap(({ stop }) => stop ?? []),
      valve: {
        cylinder: best.cylinder,
        valve: best.valve,
        marks: [...worstToBest(own.filter(({ id }) => !marks.some((each) => each.id === id))), ...marks],
        judgedId: best.id,
        holds: kept.length > 0,
        stemOpen: before?.because === 'stem' && isNearEdge(best),
        ordinaryTo: limitNamed(evidence, 'ordinary-mark-up-to').value,
        ...comparedOf(told, within),
        follower: context.follower === true,
        least,
        ...(least.value === undefined ? {} : { lookAgainOver: least.value + limit.value }),
        ...defined({
          advice: before?.hides === true || advice === undefined ? undefined : upperFirst(advice),
          first: firstDetail(before ?? after.first),
          length: lengthOf(told, within, before?.because ?? (sideways ? 'sideways' : undefined)),
          height: before === undefined && !after.answered && !sideways ? heightOf(told, within) : undefined,
        }),
        questionIds: questions.map(({ id }) => id),
      },
    },
  ];
}

const firstDetail = (first: FirstOfMark | undefined): MarkedValveDetail['first'] =>
  first === undefined
    ? undefined
    : {
        said: first.said,
        todo: first.todo,
        turns: first.turns,
        ...defined({ questionId: first.question?.id }),
      };
