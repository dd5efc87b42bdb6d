import { defined } from '../../../../shared/defined.ts';
import type { ShortAdvice } from '../../tip-mark/advice-short.ts';
import { isLike, wideBy } from '../../tip-mark/called-wide.ts';
import { markAdvice, markInShort } from '../../tip-mark/mark-questions.ts';
import type { Mark, MarkContext } from '../../tip-mark/types.ts';
import type { AssessedQuestion, StopReason } from '../assessment.ts';
import type { ValveRatio } from '../change/input.ts';
import { limitNamed } from '../common/limits.ts';
import { upperFirst } from '../common/said.ts';
import type { Evidence, LimitEvidence, TipMarkEvidence } from '../evidence.ts';
import { type AskedOfMark, answerOf } from './answers.ts';
import { INK_ONCE_MORE, WHICH_MARK } from './apart.ts';
import { askedOfMarks, lengthsOf, markAsked } from './asked-of.ts';
import { contextOf } from './context-of.ts';
import { counted } from './counted.ts';
import type { LeastSweepDetail, MarkedValveDetail } from './detail.ts';
import { edgeStop, edges } from './edges.ts';
import { leastSweepOf } from './least-sweep.ts';
import { heightOf, lengthOf } from './length-of.ts';
import { OVER_FIRST } from './length-told.ts';
import { markOf, worstToBest } from './order.ts';
import { isNearEdge, STEM_FIRST, stemQuestions } from './stem.ts';

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
    return { question, stop: edgeStop(mark, question, [...new Set([mark.id, ...sized])]) };
  });
}

/** What was answered leads on; a neighbour that was inked since has been compared already. */
function followed(
  [first]: readonly AskedOfMark[],
  beside: readonly TipMarkEvidence[],
  { answers }: Evidence,
): ShortAdvice | undefined {
  const answer = first === undefined ? undefined : answerOf(first);
  if (first === undefined || answer === undefined) return undefined;
  const said = answers.find(({ id }) => id === first.question.answered?.entryId)?.line ?? 0;
  const compared = first.asks === 'compare' && beside.some(({ line }) => line > said);
  return compared ? undefined : answer.leadsTo;
}

/** What is asked of marks that count, with the way they are told. */
function readOf(evidence: Evidence, kept: readonly TipMarkEvidence[], context: MarkContext) {
  const marks = worstToBest(kept);
  const { told, over, bothWays, waits, questions } = lengthsOf(evidence, marks);
  const within = { ...context, over, bothWays };
  return { marks, told, within, waits, ofLengths: questions };
}

const wideOf = (told: readonly Mark[], context: MarkContext) => {
  const judged = told.at(-1);
  if (judged === undefined) return {};
  const others = [...told.slice(0, -1), ...context.beside];
  return {
    ...defined({ wideBy: wideBy(judged, others, context) }),
    alone: !others.some((other) => isLike(judged, other)),
  };
};

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
  const stems = stemQuestions(own, evidence);
  const withStem =
    own.find((mark) => mark.stem !== undefined) ?? stems.find(({ stem }) => stem !== undefined)?.mark;
  const stem = withStem?.stem ?? stems.find((each) => each.stem !== undefined)?.stem;
  const context = contextOf(
    evidence,
    least,
    stem,
    beside.map((mark) => markOf(mark, evidence.arms)),
  );
  const askNow = (kept: readonly TipMarkEvidence[], hold = false) => {
    const read = readOf(evidence, kept, context);
    return askedOfMarks(evidence, read.marks, read.told, read.within, read.waits || hold);
  };
  const { kept, questions: ofCounted, open } = counted(own, evidence, askNow);
  const stemOpen = stem === undefined && stems.length > 0;
  const { marks, told, within, waits: over, ofLengths } = readOf(evidence, kept, context);
  const waits = over || open || stemOpen || kept.length === 0;
  const ofMarks = askNow(kept, waits);
  const best = marks.at(-1) ?? worstToBest(own).at(-1) ?? any;
  const atEdge = offTheEdge(evidence, own, context, withStem);
  const first = over ? OVER_FIRST : open ? WHICH_MARK : stemOpen ? STEM_FIRST : undefined;
  const then = first ?? (kept.length === 0 ? INK_ONCE_MORE : followed(ofMarks, beside, evidence));
  const advice = then?.said ?? markAdvice(told, within);
  const questions = [
    ...atEdge.map(({ question }) => question),
    ...stems.map(({ question }) => question),
    ...ofLengths,
    ...ofCounted,
    ...ofMarks.map(({ question }) => question),
  ];
  return [
    {
      questions,
      stop: atEdge.map(({ stop }) => stop),
      valve: {
        cylinder: best.cylinder,
        valve: best.valve,
        marks: [...worstToBest(own.filter(({ id }) => !marks.some((each) => each.id === id))), ...marks],
        judgedId: best.id,
        holds: kept.length > 0,
        stemOpen: stemOpen && isNearEdge(best),
        alone: true,
        ordinaryTo: limitNamed(evidence, 'ordinary-mark-up-to').value,
        ...wideOf(told, within),
        follower: context.follower === true,
        least,
        ...(least.value === undefined ? {} : { lookAgainOver: least.value + limit.value }),
        ...defined({
          advice: first !== undefined || advice === undefined ? undefined : upperFirst(advice),
          inShort: then ?? markInShort(told, within),
          length: lengthOf(told, within, waits),
          height: then === undefined ? heightOf(told, within) : undefined,
        }),
        questionIds: questions.map(({ id }) => id),
      },
    },
  ];
}
