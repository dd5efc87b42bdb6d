import { markQuestions } from '../../tip-mark/mark-questions.ts';
import type { MarkContext, MarkQuestion } from '../../tip-mark/types.ts';
import type { AssessedQuestion, StopReason } from '../assessment.ts';
import { placeOf } from '../common/said.ts';
import type { TipMarkEvidence } from '../evidence.ts';
import { markOf } from './order.ts';

/** A mark at the edge is asked of each mark that has it, not of the best one alone: the worst stands. */
export function edges(
  marks: readonly TipMarkEvidence[],
  context: MarkContext,
): { readonly mark: TipMarkEvidence; readonly found: MarkQuestion }[] {
  return marks.flatMap((mark) =>
    markQuestions([markOf(mark)], { ...context, stem: mark.stem ?? context.stem })
      .filter(({ code }) => code === 'mark-at-the-edge')
      .map((found) => ({ mark, found })),
  );
}

export function edgeStop(mark: TipMarkEvidence, question: AssessedQuestion): StopReason {
  return {
    id: `stop:mark-at-the-edge:${mark.id}`,
    code: 'mark-at-the-edge',
    about: question.about,
    sentence: `Do not turn it: the tip mark of ${placeOf(mark)} runs off the edge of the stem.`,
    wayOut:
      'a qualified shop looks at the edge and the guide; with another length on it, strike this mark out with the reason.',
    from: 'readings',
    entryId: mark.id,
    line: mark.line,
    answered: question.answered !== undefined,
  };
}
