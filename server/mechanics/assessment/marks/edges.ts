import { isOfEdge, markQuestions } from '../../tip-mark/mark-questions.ts';
import type { MarkContext, MarkQuestion } from '../../tip-mark/types.ts';
import type { AssessedQuestion, StopReason } from '../assessment.ts';
import { placeOf } from '../common/said.ts';
import { wayOutOf } from '../common/way-out.ts';
import type { TipMarkEvidence } from '../evidence.ts';
import { markOf } from './order.ts';

/** A mark at the edge is asked of each mark that has it, not of the best one alone: the worst stands. */
export function edges(
  marks: readonly TipMarkEvidence[],
  context: MarkContext,
): { readonly mark: TipMarkEvidence; readonly found: MarkQuestion }[] {
  return marks.flatMap((mark) =>
    markQuestions([markOf(mark)], { ...context, stem: mark.stem ?? context.stem })
      .filter(({ asks }) => isOfEdge(asks))
      .map((found) => ({ mark, found })),
  );
}

/** `restsOn`: the mark, and the one that the stem’s size was said with. */
export function edgeStop(
  mark: TipMarkEvidence,
  question: AssessedQuestion,
  restsOn: readonly string[],
): StopReason {
  return {
    id: `stop:mark-at-the-edge:${mark.id}`,
    code: 'mark-at-the-edge',
    about: question.about,
    sentence: `Do not turn it: the tip mark of ${placeOf(mark)} runs off the edge of the stem.`,
    ...wayOutOf(
      'have a qualified shop look at the stem’s edge and the guide',
      question.answered !== undefined,
    ),
    from: 'readings',
    entryId: mark.id,
    line: mark.line,
    answered: question.answered !== undefined,
    restsOn,
  };
}
