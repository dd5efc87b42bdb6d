import { foundSaid } from '../../../../shared/begins-with.ts';
import { sideOfValve } from '../../../../shared/schemas/words.ts';
import { placeOf } from '../common/said.ts';
import type { AnswerEvidence, Evidence, SheetEvidence } from '../evidence.ts';
import { heldByAnswer } from '../sheet/group-answered.ts';
import { raisedByRows } from '../sheet/raised.ts';
import { rowsOf } from '../sheet/rows.ts';
import { saidOfSheet } from '../sheet/said-of-sheet.ts';
import { SAYS_MISREAD } from './says-misread.ts';

const ASKED = /^question:([a-z-]+):/;

/** Of one question the last answer counts. */
const isLast = ({ answers }: Evidence, { questionId, question, line }: AnswerEvidence): boolean =>
  answers.every(
    (each) =>
      each.line <= line ||
      (questionId === undefined ? each.question !== question : each.questionId !== questionId),
  );

/** Answers that may be of the sheet: of no set-up, and by their id of a misread figure, or known by their words alone. */
const mayBeOfSheet = ({ setUpId, questionId, answer, found }: AnswerEvidence): boolean => {
  const code = ASKED.exec(questionId ?? '')?.[1];
  return (
    setUpId === undefined &&
    (found ?? foundSaid(answer) === true) &&
    (questionId === undefined || (code !== undefined && SAYS_MISREAD.has(code)))
  );
};

/** Readings that an answer found wrong, of those that were there when it was given. */
function foundWrong(evidence: Evidence, answer: AnswerEvidence): ReadonlySet<string> {
  const sheet = evidence.sheet.filter(({ line }) => line < answer.line);
  const { evidence: then } = saidOfSheet({ ...evidence, sheet });
  const asked = raisedByRows(then, rowsOf(then), []).filter(
    ({ answered }) => answered?.entryId === answer.id,
  );
  return new Set(
    asked
      .filter(({ code, answered }) => answered?.found === true && SAYS_MISREAD.has(code))
      .flatMap(({ restsOn }) => restsOn),
  );
}

const isAgain = (one: SheetEvidence, again: SheetEvidence): boolean =>
  placeOf(one) === placeOf(again) &&
  one.kind === again.kind &&
  one.arms === again.arms &&
  (one.kind === 'lobe-lift' || one.spring === again.spring);

const isLift = ({ standing, kind }: SheetEvidence): boolean => standing && kind.endsWith('lift');

/** Readings of one thing before and after the line of an answer. */
const readAgainAt = (lifts: readonly SheetEvidence[], line: number): SheetEvidence[] => {
  const after = lifts.filter((each) => each.line > line);
  return lifts.filter((each) => each.line < line && after.some((again) => isAgain(each, again)));
};

/** Readings of the sheet that were found wrong by an answer, and taken again because of it. */
export function sheetReadSince(evidence: Evidence): ReadonlySet<string> {
  const lifts = evidence.sheet.filter(isLift);
  if (lifts.length === 0) return new Set();
  const ofOne = evidence.answers
    .filter((answer) => mayBeOfSheet(answer) && isLast(evidence, answer))
    .flatMap((answer) => {
      const again = readAgainAt(lifts, answer.line);
      if (again.length === 0) return [];
      const wrong = foundWrong(evidence, answer);
      return again.filter(({ id }) => wrong.has(id));
    });
  const ofAll = heldByAnswer(evidence).flatMap(({ line, kind, spring, side, cylinders }) =>
    readAgainAt(lifts, line).filter(
      (each) =>
        each.kind === kind &&
        (spring === undefined || each.spring === spring) &&
        (side === undefined || sideOfValve(each.valve) === side) &&
        (cylinders === undefined || cylinders.has(String(each.cylinder))),
    ),
  );
  return new Set([...ofOne, ...ofAll].map(({ id }) => id));
}
