import { siIf } from '../../../shared/schemas/entered.ts';
import type { PasteSheet } from '../../../shared/schemas/sheet.ts';
import type { AssessedQuestion } from '../../mechanics/assessment/assessment.ts';
import { sheetPart } from '../../mechanics/assessment/sheet/sheet.ts';
import { nowOnValves } from '../../records/arms/placements.ts';
import type { Call } from '../../records/calls/calls.ts';
import type { Look } from '../../records/sheet/paste-sheet.ts';
import { howOf } from '../../records/sheet/sheet-readings.ts';
import type { SheetReading } from '../../records/sheet/sheet-table.ts';
import type { BuildRecord } from '../../records/whole-build/build-record.ts';
import { evidenceOf } from '../evidence.ts';

type PastedReading = Look['readings'][number];

const idOf = ({ line, valve, kind }: PastedReading): string => `pasted:${line}:${valve}:${kind}`;

/** The pasted readings as they would stand on the record. */
function asKept(record: BuildRecord, input: Omit<PasteSheet, 'keep'>, look: Look): SheetReading[] {
  const now = nowOnValves(record.placements);
  const at = record.build.createdAt;
  return look.readings.map((each) => ({
    id: idOf(each),
    seq: record.build.version + 1,
    replaces: undefined,
    replacedBy: undefined,
    struck: false,
    reason: '',
    by: '',
    byKind: '',
    at,
    cylinder: each.cylinder,
    valve: each.valve,
    kind: each.kind,
    reading: each.reading,
    ...howOf(input, each.kind),
    arms: input.arms,
    armId: now.find(({ cylinder, valve }) => cylinder === each.cylinder && valve === each.valve)?.armId,
  }));
}

/** A question with the pasted lines it is about. */
export interface PastedQuestion {
  readonly question: AssessedQuestion;
  readonly lines: readonly number[];
}

/** What pasted rows would be asked if they were kept: the very questions, before they are. */
export function questionsOfPasted(
  record: BuildRecord,
  call: Call,
  input: Omit<PasteSheet, 'keep'>,
  look: Look,
): PastedQuestion[] {
  const lines = new Map(look.readings.map((each) => [idOf(each), each.line]));
  const pasted = asKept(record, input, look);
  const evidence = evidenceOf({ ...record, sheetReadings: [...record.sheetReadings, ...pasted] }, call);
  const perTurn = siIf(input.perTurn);
  const sheet = evidence.sheet.map((each) =>
    perTurn !== undefined && lines.has(each.id) ? { ...each, perTurn } : each,
  );
  return sheetPart({ ...evidence, sheet }).questions.flatMap((question): PastedQuestion[] => {
    const own = question.restsOn.flatMap((id) => lines.get(id) ?? []);
    return own.length === 0 ? [] : [{ question, lines: [...new Set(own)].sort((a, b) => a - b) }];
  });
}
