import { type ShortAdvice, toSay, toTurn } from '../../tip-mark/advice-short.ts';
import { markInShort } from '../../tip-mark/mark-questions.ts';
import type { Mark, MarkContext } from '../../tip-mark/types.ts';
import type { AssessedQuestion } from '../assessment.ts';
import { isSince } from '../common/since.ts';
import type { Evidence, TipMarkEvidence } from '../evidence.ts';
import { type AskedOfMark, answerOf } from './answers.ts';
import type { WhyNoLength } from './detail.ts';

/** What is asked or done first of the marks of a valve: its sentence, whether it turns, and the question that it is of. */
export interface FirstOfMark extends ShortAdvice {
  readonly question?: AssessedQuestion;
}

/** The same, with what it keeps from being told. */
export interface BeforeLengths extends FirstOfMark {
  readonly because: WhyNoLength;
  /** How the marks lie is not told at any length either. */
  readonly hides: boolean;
}

const STEM_FIRST = toSay(
  'Say the diameter of the stem’s end first: whether the mark runs off its edge goes by that.',
);
const FIGURE_FIRST = toSay(
  'A figure of this mark cannot be on that stem: read it off the stem’s end once more, and enter it again.',
);
const EDGE_FIRST = toSay(
  'Look at the edge first: ink and caliper are no better than what is left between the mark and the edge of the stem.',
);
const OVER_FIRST = toSay('Say first over what each pushrod length was taken: over its ends, or by a gauge.');
const WHICH_MARK = toSay(
  'Two marks made alike sit on opposite sides of the middle: say first which one holds.',
);
const INK_ONCE_MORE = toTurn(
  'Ink it once more as it was, two whole turns by hand, and enter that mark: nothing is told from the two.',
);

interface Open {
  /** A figure that no mark on that stem has. */
  readonly figure: AssessedQuestion | undefined;
  /** So close to the edge that ink does not tell on which side of it, while nobody looked. */
  readonly edge: AssessedQuestion | undefined;
  /** What the stem under the mark is, while nobody said. */
  readonly stem: AssessedQuestion | undefined;
  /** Over what a length was taken, while nobody said. */
  readonly over: AssessedQuestion | undefined;
  /** Which of two marks that pull apart holds, and whether nobody said. */
  readonly apart: { readonly question: AssessedQuestion; readonly open: boolean } | undefined;
  readonly noneCounts: boolean;
}

/** What has to be known before anything is told of lengths; the edge goes first, since whether anybody turns it hangs on it. */
export function beforeLengths({
  figure,
  edge,
  stem,
  over,
  apart,
  noneCounts,
}: Open): BeforeLengths | undefined {
  if (figure !== undefined) return { ...FIGURE_FIRST, question: figure, because: 'edge', hides: true };
  if (stem !== undefined) return { ...STEM_FIRST, question: stem, because: 'stem', hides: true };
  if (edge !== undefined) return { ...EDGE_FIRST, question: edge, because: 'edge', hides: true };
  if (over !== undefined) return { ...OVER_FIRST, question: over, because: 'over', hides: true };
  if (apart?.open === true) return { ...WHICH_MARK, question: apart.question, because: 'apart', hides: true };
  if (!noneCounts) return undefined;
  return {
    ...INK_ONCE_MORE,
    ...(apart === undefined ? {} : { question: apart.question }),
    because: 'apart',
    hides: false,
  };
}

/** What an answer leads on to; a neighbour that was inked since has been compared already. */
function ledOn({ answers }: Evidence, asked: AskedOfMark, beside: readonly TipMarkEvidence[]): FirstOfMark[] {
  const said = answers.find(({ id }) => id === asked.question.answered?.entryId);
  const leads = answerOf(asked)?.follows;
  if (said === undefined || leads === undefined) return [];
  const compared = asked.asks === 'compare' && beside.some((mark) => isSince(mark, said));
  return compared ? [] : [{ ...leads, question: asked.question }];
}

/**
 * What is asked of these marks or was answered of them: of what is open the first, else of what was answered the first that
 * something is to be done for.
 */
export function firstOf(
  evidence: Evidence,
  ofMarks: readonly AskedOfMark[],
  told: readonly Mark[],
  context: MarkContext,
  beside: readonly TipMarkEvidence[],
): { readonly first?: FirstOfMark; readonly answered: boolean } {
  const open = ofMarks.find(({ question }) => question.answered === undefined);
  if (open !== undefined) {
    const said = markInShort(told, context, open.asks);
    return {
      ...(said === undefined ? {} : { first: { ...said, question: open.question } }),
      answered: false,
    };
  }
  const led = ofMarks.flatMap((each) => ledOn(evidence, each, beside));
  const own = led.find(({ todo }) => todo) ?? led[0];
  if (own !== undefined) return { first: own, answered: true };
  const said = markInShort(told, context);
  return { ...(said === undefined ? {} : { first: said }), answered: false };
}
