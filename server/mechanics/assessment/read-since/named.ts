import { isAnswer } from '../../../../shared/begins-with.ts';
import { placeOf } from '../common/said.ts';
import { wasThere } from '../common/since.ts';
import type { AnswerEvidence, Evidence, SheetEvidence } from '../evidence.ts';
import { sheetPart } from '../sheet/sheet.ts';

/** Answers of many valves at once that have them read again. */
const READ_AGAIN = ['lash', 'set-up', 'set', 'dial'] as const;

/** Known by the words of its question alone, as a program may send it. */
const isByWords = ({ questionId, setUpId, answer }: AnswerEvidence): boolean =>
  questionId === undefined && setUpId === undefined && READ_AGAIN.some((code) => isAnswer(answer, code));

const isAlike = (one: SheetEvidence, other: SheetEvidence): boolean =>
  placeOf(one) === placeOf(other) && one.kind === other.kind && one.spring === other.spring;

/** The sheet as it was when an answer was given: what was struck out because of it stood then. */
function sheetThen({ sheet }: Evidence, answer: AnswerEvidence): SheetEvidence[] {
  const there = sheet.filter((entry) => wasThere(entry, answer));
  const standing = there.filter((entry) => entry.standing);
  const gone = there.filter(
    (entry) => entry.line < answer.line && !standing.some((each) => isAlike(each, entry)),
  );
  return [...standing, ...gone.map((entry) => ({ ...entry, standing: true }))];
}

/** The id of the question of the sheet that it answers, as the sheet was when it was given. */
function questionOf(evidence: Evidence, answer: AnswerEvidence): Pick<AnswerEvidence, 'questionId'> {
  const { questions } = sheetPart({ ...evidence, sheet: sheetThen(evidence, answer), answers: [answer] });
  const asked = questions.find(({ answered }) => answered?.entryId === answer.id);
  return asked === undefined ? {} : { questionId: asked.id };
}

/** Answers of the sheet that were kept in words alone, under the id of their question: its words change as it is read on. */
export function withAnswersNamed(evidence: Evidence): Evidence {
  if (evidence.sheet.length === 0 || !evidence.answers.some(isByWords)) return evidence;
  return {
    ...evidence,
    answers: evidence.answers.map((answer) =>
      isByWords(answer) ? { ...answer, ...questionOf(evidence, answer) } : answer,
    ),
  };
}
