import type { AssessedQuestion } from '../../assessment.ts';
import { inDoubt } from '../../common/asked.ts';
import { answerSaid } from '../../common/chosen.ts';
import type { SetUpKnown } from '../../ratio/compared/known.ts';
import { answerLack, type RatioLack } from '../../ratio/read/lack.ts';
import { askedSaid } from '../../ratio/read/lack-said.ts';

/** Answered that one of them was misread, that one is entered again: nobody waits for an answer any more. */
const lackOf = (question: AssessedQuestion): RatioLack =>
  question.answered?.found === true
    ? {
        code: 'enter-again',
        passes: [],
        entryIds: question.restsOn,
        byOthers: false,
        why: askedSaid(question.ask, answerSaid(question)),
      }
    : answerLack(question);

/**
 * The set-ups, where one that the sheet reads otherwise waits for the answer which of the two holds: no word stands on
 * either before that.
 */
export const waitingForSheet = (
  known: readonly SetUpKnown[],
  questions: readonly AssessedQuestion[],
): SetUpKnown[] => {
  const open = questions.filter((each) => each.code === 'read-otherwise' && inDoubt(each));
  return known.map((each) => {
    const own = open.filter(({ restsOn }) => each.read.valve.used.some(({ id }) => restsOn.includes(id)));
    return own.length === 0 ? each : { ...each, lacks: [...each.lacks, ...own.map(lackOf)] };
  });
};
