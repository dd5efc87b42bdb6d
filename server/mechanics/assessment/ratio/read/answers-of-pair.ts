import { placeOf } from '../../common/said.ts';
import { wasThere } from '../../common/since.ts';
import type { AnswerEvidence, Evidence, SetUpEvidence } from '../../evidence.ts';
import { codeOf, foundBy } from './answers.ts';
import { lobeOf } from './lobe.ts';
import { SPRINGS_SWAPPED, withSayings } from './sayings.ts';

/** The spring of a set-up as it was known before an answer. */
function springThen({ statements, answers }: Evidence, setUp: SetUpEvidence, line: number) {
  const earlier = <Each extends { readonly line: number }>(all: readonly Each[]) =>
    all.filter((each) => each.line < line);
  const own = answers.filter((answer) => answer.setUpId === setUp.id && codeOf(answer) !== SPRINGS_SWAPPED);
  return withSayings(setUp, earlier(statements), earlier(own)).spring;
}

/** A ratio was made of it when it was asked: it had its valve lift, and a lobe lift to set it over. */
function hadRatio(evidence: Evidence, each: SetUpEvidence, all: readonly SetUpEvidence[]): boolean {
  const asNow = (setUp: SetUpEvidence) => ({ ...setUp, armTaken: false, answers: [] });
  return (
    evidence.passes.some(
      ({ setUpId, kind, value }) => setUpId === each.id && kind === 'valve-lift' && value > 0,
    ) && lobeOf(evidence, asNow(each), all.map(asNow)).value !== undefined
  );
}

/** The set-up that was read on the other spring when this one was asked about, the newest where there are several. */
function pairOf(
  evidence: Evidence,
  asked: SetUpEvidence,
  all: readonly SetUpEvidence[],
  answer: AnswerEvidence,
): SetUpEvidence | undefined {
  const passes = evidence.passes.filter((pass) => wasThere(pass, answer));
  const then = { ...evidence, passes };
  const entered = (id: string) => evidence.setUps.find((each) => each.id === id);
  const springOf = ({ id }: SetUpEvidence) => {
    const setUp = entered(id);
    return setUp === undefined ? 'not-said' : springThen(evidence, setUp, answer.line);
  };
  const other = springOf(asked) === 'light' ? 'running' : 'light';
  return all
    .filter(
      (each) =>
        each.id !== asked.id &&
        placeOf(each) === placeOf(asked) &&
        each.armId === asked.armId &&
        springOf(each) === other &&
        hadRatio(then, each, all),
    )
    .toSorted((a, b) => a.number - b.number)
    .at(-1);
}

/** Asked of the other set-up in the same words: it is known there by them, and not by the id of the first. */
function ofOther(answer: AnswerEvidence): AnswerEvidence {
  if (foundBy(answer) !== false) return answer;
  const { questionId: _, ...rest } = answer;
  return rest;
}

/** Whether two springs were noted the wrong way round is answered of one of two set-ups, and holds for the other too. */
export const answersOfPair = (
  evidence: Evidence,
  { id }: SetUpEvidence,
  all: readonly SetUpEvidence[],
): AnswerEvidence[] =>
  evidence.answers
    .filter((answer) => {
      if (codeOf(answer) !== SPRINGS_SWAPPED || answer.setUpId === undefined || answer.setUpId === id)
        return false;
      const asked = all.find((each) => each.id === answer.setUpId);
      return asked !== undefined && pairOf(evidence, asked, all, answer)?.id === id;
    })
    .map(ofOther);
