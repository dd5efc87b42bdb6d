import type { AssessedQuestion } from '../../assessment.ts';
import { placeOf } from '../../common/said.ts';
import type { Evidence } from '../../evidence.ts';
import { doubtsOfReadings } from '../../gaps/doubts.ts';
import type { JudgedGap } from '../../gaps/gap.ts';
import { shortGap } from '../../gaps/gap-stops.ts';
import { readTwice } from '../../gaps/read-twice.ts';
import { ofArmsOn } from '../../gaps/worst.ts';
import { gapCells } from './cells.ts';
import type { SheetRow } from './rows.ts';

/** What is asked of the lash in gaps, once where it is asked of several. */
function lashQuestions(judged: readonly JudgedGap[]): AssessedQuestion[] {
  const all = judged.flatMap(({ lash, asksLash }) => (asksLash && lash !== undefined ? [lash.question] : []));
  return [...new Map(all.map((question) => [question.id, question])).values()];
}

/** The gaps of every row: their cells, what is said and asked of them, and those that are short as they are. */
export function gapsOfRows(evidence: Evidence, rows: readonly SheetRow[]) {
  const cells = new Map(rows.map((row) => [placeOf(row), gapCells(evidence, row)]));
  const all = [...cells.values()].flat();
  const judged = all.flatMap(({ each }) => each);
  return {
    cellsOf: (row: SheetRow) => cells.get(placeOf(row)) ?? [],
    judgements: all.map(({ judgement }) => judgement),
    short: all.flatMap(({ each }) => ofArmsOn(each)).flatMap((one) => shortGap(one, evidence)),
    questions: [
      ...all.flatMap(({ each }) => readTwice(each, evidence)),
      ...doubtsOfReadings(evidence),
      ...lashQuestions(judged),
    ],
  };
}
