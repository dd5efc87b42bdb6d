import { placeOf } from '../common/said.ts';
import type { AnswerEvidence, Evidence, SetUpEvidence } from '../evidence.ts';
import { codeOf } from './answers.ts';
import { SPRINGS_SWAPPED, withSayings } from './sayings.ts';

/** The spring of a set-up as it was known before an answer. */
function springThen({ statements, answers }: Evidence, setUp: SetUpEvidence, line: number) {
  const earlier = <Each extends { readonly line: number }>(all: readonly Each[]) =>
    all.filter((each) => each.line < line);
  const own = answers.filter((answer) => answer.setUpId === setUp.id && codeOf(answer) !== SPRINGS_SWAPPED);
  return withSayings(setUp, earlier(statements), earlier(own)).spring;
}

/** The set-up that was read on the other spring when this one was asked about, the newest where there are several. */
function pairOf(
  evidence: Evidence,
  asked: SetUpEvidence,
  all: readonly SetUpEvidence[],
  line: number,
): SetUpEvidence | undefined {
  const entered = (id: string) => evidence.setUps.find((each) => each.id === id);
  const springOf = ({ id }: SetUpEvidence) => {
    const setUp = entered(id);
    return setUp === undefined ? 'not-said' : springThen(evidence, setUp, line);
  };
  const other = springOf(asked) === 'light' ? 'running' : 'light';
  return all
    .filter(
      (each) =>
        each.id !== asked.id &&
        placeOf(each) === placeOf(asked) &&
        each.armId === asked.armId &&
        springOf(each) === other &&
        evidence.passes.some((pass) => pass.setUpId === each.id && pass.line < line),
    )
    .toSorted((a, b) => a.number - b.number)
    .at(-1);
}

/** Whether two springs were noted the wrong way round is answered of one of two set-ups, and holds for the other too. */
export const answersOfPair = (
  evidence: Evidence,
  { id }: SetUpEvidence,
  all: readonly SetUpEvidence[],
): AnswerEvidence[] =>
  evidence.answers.filter((answer) => {
    if (codeOf(answer) !== SPRINGS_SWAPPED || answer.setUpId === undefined || answer.setUpId === id)
      return false;
    const asked = all.find((each) => each.id === answer.setUpId);
    return asked !== undefined && pairOf(evidence, asked, all, answer.line)?.id === id;
  });
