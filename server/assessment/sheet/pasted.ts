import type { PasteSheet } from '../../../shared/schemas/sheet.ts';
import type { AssessedQuestion } from '../../mechanics/assessment/assessment.ts';
import type { Call } from '../../records/calls/calls.ts';
import type { Look } from '../../records/sheet/paste-sheet.ts';
import type { BuildRecord } from '../../records/whole-build/build-record.ts';
import { questionsOfNotKept } from './not-kept.ts';

type PastedReading = Look['readings'][number];

const idOf = ({ line, valve, kind }: PastedReading): string => `pasted:${line}:${valve}:${kind}`;

/** A question with the pasted lines it is about. */
export interface PastedQuestion {
  readonly question: AssessedQuestion;
  readonly lines: readonly number[];
}

/** What pasted rows would be asked if they were kept. */
export function questionsOfPasted(
  record: BuildRecord,
  call: Call,
  input: Omit<PasteSheet, 'keep'>,
  look: Look,
): PastedQuestion[] {
  const lines = new Map(look.readings.map((each) => [idOf(each), each.line]));
  const readings = look.readings.map((each) => ({ ...each, id: idOf(each) }));
  return questionsOfNotKept(record, call, input, readings).map((question) => {
    const own = question.restsOn.flatMap((id) => lines.get(id) ?? []);
    return { question, lines: [...new Set(own)].sort((a, b) => a - b) };
  });
}
