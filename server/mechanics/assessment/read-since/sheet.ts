import { foundSaid } from '../../../../shared/begins-with.ts';
import { lastAnswers, partsOfId } from '../common/asked.ts';
import { placeOf } from '../common/said.ts';
import { isSince, wasThere } from '../common/since.ts';
import type { AnswerEvidence, Evidence, SheetEvidence } from '../evidence.ts';
import { WHOSE_VALVE } from '../ratio/compared/lobe-low.ts';
import { raisedByRows } from '../sheet/asked/raised.ts';
import { rowsOf } from '../sheet/rows/rows.ts';
import { saidOfSheet } from '../sheet/rows/said-of-sheet.ts';
import { heldByAnswer, isInScope } from '../sheet/sides/group-answered.ts';
import { ROW_MISREAD } from './says-misread.ts';

/** Answers that may be of the sheet: of no set-up, and by their id of a misread figure, or known by their words alone. */
const mayBeOfSheet = ({ setUpId, questionId, answer, found }: AnswerEvidence): boolean => {
  const { code } = partsOfId(questionId) ?? {};
  return (
    setUpId === undefined &&
    (found ?? foundSaid(answer) === true) &&
    (questionId === undefined || (code !== undefined && ROW_MISREAD.has(code)))
  );
};

/** Readings that an answer found wrong, of those that were there when it was given. */
function foundWrong(evidence: Evidence, answer: AnswerEvidence): ReadonlySet<string> {
  const sheet = evidence.sheet.filter((entry) => wasThere(entry, answer));
  const { evidence: then } = saidOfSheet({ ...evidence, sheet });
  const asked = raisedByRows(then, rowsOf(then), []).filter(
    ({ answered }) => answered?.entryId === answer.id,
  );
  return new Set(
    asked
      .filter(({ code, answered }) => answered?.found === true && ROW_MISREAD.has(code))
      .flatMap(({ code, restsOn }) => (code === WHOSE_VALVE ? wholeRows(sheet, restsOn) : restsOn)),
  );
}

/** Read on the other valve, nothing of the row is of its own: the lift is as wrong as the lobe that shows it. */
function wholeRows(sheet: readonly SheetEvidence[], restsOn: readonly string[]): string[] {
  const places = new Set(sheet.filter(({ id }) => restsOn.includes(id)).map(placeOf));
  return sheet.filter((each) => places.has(placeOf(each))).map(({ id }) => id);
}

const isAgain = (one: SheetEvidence, again: SheetEvidence): boolean =>
  placeOf(one) === placeOf(again) &&
  one.kind === again.kind &&
  one.arms === again.arms &&
  (one.kind === 'lobe-lift' || one.spring === again.spring);

const isLift = ({ standing, kind }: SheetEvidence): boolean => standing && kind.endsWith('lift');

/** Readings of one thing that were there when an answer was given, and were taken once more since. */
const readAgainSince = (lifts: readonly SheetEvidence[], answer: AnswerEvidence): SheetEvidence[] => {
  const after = lifts.filter((each) => isSince(each, answer));
  return lifts.filter((each) => wasThere(each, answer) && after.some((again) => isAgain(each, again)));
};

/** Readings of the sheet that were found wrong by an answer, and taken again because of it. */
export function sheetReadSince(evidence: Evidence): ReadonlySet<string> {
  const lifts = evidence.sheet.filter(isLift);
  if (lifts.length === 0) return new Set();
  const ofOne = lastAnswers(evidence.answers)
    .filter(mayBeOfSheet)
    .flatMap((answer) => {
      const again = readAgainSince(lifts, answer);
      if (again.length === 0) return [];
      const wrong = foundWrong(evidence, answer);
      return again.filter(({ id }) => wrong.has(id));
    });
  const ofMany = heldByAnswer(evidence).flatMap(({ answer, scope }) =>
    readAgainSince(lifts, answer).filter((each) => isInScope(scope, each)),
  );
  return new Set([...ofOne, ...ofMany].map(({ id }) => id));
}
