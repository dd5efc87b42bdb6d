import { questionsFor } from '../../questions/questions.ts';
import type { Tolerances } from '../../questions/tolerances.ts';
import type { AssessedQuestion, Subject } from '../assessment.ts';
import { asked, type Doubt } from '../common/asked.ts';
import { valveSubject } from '../common/said.ts';
import type { Evidence } from '../evidence.ts';
import { passesApartQuestion } from './pass-apart.ts';
import { middleOf, questionInput } from './question-input.ts';
import type { LiftLot, SheetRow } from './rows.ts';

/** Doubts that a row of figures can raise by itself; how it was read is asked of the set-up. */
const OF_A_ROW: ReadonlySet<string> = new Set([
  'unit-mixed',
  'decimal-slip',
  'gross-lift-as-lobe',
  'turn-miscounted',
  'hand-read-backwards',
  'valve-swapped',
  'caliper-on-lobe',
]);

/** A row without a lift is still asked about its lobe. */
const NO_LIFT = { spring: 'not-said', readings: [] } as const;

/** What one row is asked, on each spring and with each arm that sat there. */
function ofRow(
  evidence: Evidence,
  row: SheetRow,
  rows: readonly SheetRow[],
  tolerances: Tolerances | undefined,
): AssessedQuestion[] {
  const other = row.valve === 'intake' ? 'exhaust' : 'intake';
  const beside = { own: middleOf(rows, row.valve), other: middleOf(rows, other), peaks: [] };
  const lots: readonly Pick<LiftLot, 'spring' | 'readings' | 'armId'>[] =
    row.everyLift.length > 0 ? row.everyLift : row.lobes.length > 0 ? [NO_LIFT] : [];
  return lots.flatMap((lot) =>
    questionsFor(questionInput(evidence, row, lot, beside), tolerances)
      .filter(({ code }) => OF_A_ROW.has(code))
      .map((question) =>
        asked(question, { ...placeOfDoubt(question, row, lot), step: 'sheet', answers: evidence.answers }),
      ),
  );
}

/** A doubt of the card is asked once for its side, one of the lobe once for the row, one of a lift for its lot. */
function placeOfDoubt(
  { restsOn }: Doubt,
  row: SheetRow,
  { spring, armId }: Pick<LiftLot, 'spring' | 'armId'>,
): { readonly about: Subject; readonly among?: string } {
  if (restsOn.length === 0) return { about: { of: 'side', valve: row.valve } };
  const about = valveSubject(row);
  if (restsOn.every((id) => row.lobes.some((lobe) => lobe.id === id))) return { about, among: 'lobe' };
  return { about, among: armId === undefined ? spring : `${spring}-${armId}` };
}

/** One question of one id, at its strongest: what is asked of the lobe comes up with each lot of lifts. */
function onceEach(questions: readonly AssessedQuestion[]): AssessedQuestion[] {
  const found = new Map<string, AssessedQuestion>();
  for (const question of questions)
    if (found.get(question.id)?.weight !== 'strong') found.set(question.id, question);
  return [...found.values()];
}

/** Everything that the figures of the rows raise, valve by valve. */
export function rowQuestions(
  evidence: Evidence,
  rows: readonly SheetRow[],
  tolerances?: Tolerances,
): AssessedQuestion[] {
  return onceEach(
    rows.flatMap((row) => [
      ...ofRow(evidence, row, rows, tolerances),
      ...passesApartQuestion(row, evidence.answers),
    ]),
  );
}
