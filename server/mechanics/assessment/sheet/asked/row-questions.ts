import { sideOfValve } from '../../../../../shared/schemas/words.ts';
import { digitsSwapped } from '../../../questions/digits-swapped.ts';
import { questionsFor } from '../../../questions/questions.ts';
import { defaultTolerances, type Tolerances } from '../../../questions/tolerances.ts';
import type { Question } from '../../../questions/types.ts';
import type { AssessedQuestion, Subject } from '../../assessment.ts';
import { answersOf } from '../../common/answers-of.ts';
import { asked, type Doubt } from '../../common/asked.ts';
import type { KnownBefore } from '../../common/named-late.ts';
import { valveSubject } from '../../common/said.ts';
import type { Evidence, SheetEvidence } from '../../evidence.ts';
import { knownAmong } from '../rows/known-among.ts';
import type { LiftLot, SheetRow } from '../rows/rows.ts';
import { digitSlips } from './digit-slips.ts';
import { onceOfCylinder } from './once-of-cylinder.ts';
import { EXCHANGED, onceOfSheet } from './once-of-sheet.ts';
import { onceOfSide } from './once-of-side.ts';
import { oncePerSlip } from './once-per-slip.ts';
import { passesApartQuestion } from './pass-apart.ts';
import { middlesOfSide, questionInput } from './question-input.ts';

/** Doubts that a row of figures can raise by itself; how it was read is asked of the set-up. */
const OF_A_ROW = [
  'unit-mixed',
  'decimal-slip',
  'lifts-exchanged',
  'gross-lift-as-lobe',
  'turn-miscounted',
  'hand-read-backwards',
  'digits-swapped',
  'valve-swapped',
  'caliper-on-lobe',
] as const;

type OfRow = Question & { readonly code: (typeof OF_A_ROW)[number] };

const isOfRow = (question: Question): question is OfRow => OF_A_ROW.some((code) => code === question.code);

/** Slips of the hands of a dial: what was read without one has none. */
const OF_A_DIAL: ReadonlySet<string> = new Set(['turn-miscounted', 'hand-read-backwards']);

/** The readings that a doubt rests on came off no dial. */
const isWithoutDial = (readings: readonly SheetEvidence[], restsOn: readonly string[]): boolean => {
  const own = readings.filter(({ id }) => restsOn.includes(id));
  return own.length > 0 && own.every(({ tool }) => tool !== 'indicator' && tool !== 'not-said');
};

const isIn = ({ readings }: Pick<LiftLot, 'readings'>, id: string): boolean =>
  readings.some((each) => each.id === id);

/** A row without a lift is still asked about its lobe. */
const NO_LIFT = { spring: 'not-said', readings: [] } as const;

/** A bucket lifts the valve by what the lobe lifts: there a ratio of one raises no doubt. */
const isOrdinary = (code: string, { engine }: Evidence): boolean =>
  engine.gear === 'bucket' && code === 'gross-lift-as-lobe';

/** What one row is asked, on each spring and with each arm that sat there. */
function ofRow(
  evidence: Evidence,
  row: SheetRow,
  rows: readonly SheetRow[],
  tolerances: Tolerances | undefined,
): AssessedQuestion[] {
  const other = sideOfValve(row.valve) === 'intake' ? 'exhaust' : 'intake';
  const beside = {
    own: middlesOfSide(rows, sideOfValve(row.valve)),
    other: middlesOfSide(rows, other),
    peaks: [],
  };
  const lots: readonly (Omit<LiftLot, 'figure'> & Partial<Pick<LiftLot, 'figure'>>)[] =
    row.everyLift.length > 0 ? row.everyLift : row.lobes.length > 0 ? [NO_LIFT] : [];
  return lots.flatMap((lot) => {
    const input = questionInput(evidence, row, lot, beside);
    const doubts = [
      ...questionsFor(input, tolerances),
      ...digitsSwapped(input, tolerances ?? defaultTolerances),
    ];
    return (
      doubts
        .filter(isOfRow)
        .filter(({ code }) => !isOrdinary(code, evidence))
        // Nobody says which of two readings counts: no slip is made of their mean.
        .filter(({ restsOn }) => lot.figure?.undecided !== true || !restsOn.some((id) => isIn(lot, id)))
        .filter(
          ({ code, restsOn }) =>
            !OF_A_DIAL.has(code) || !isWithoutDial([...lot.readings, ...row.lobes], restsOn),
        )
        .map((question) =>
          asked(question, {
            ...placeOfDoubt(question, row, lot),
            step: 'sheet',
            answers: evidence.answers,
            choices: answersOf(question.code),
          }),
        )
    );
  });
}

/** A doubt of the card is asked once for its side, one of the lobe once for the row, one of a lift for its lot. */
function placeOfDoubt(
  { restsOn }: Doubt,
  row: SheetRow,
  lot: Omit<LiftLot, 'figure'>,
): { readonly about: Subject; readonly among?: string; readonly before?: KnownBefore } {
  if (restsOn.length === 0) return { about: { of: 'side', valve: sideOfValve(row.valve) } };
  const about = valveSubject(row);
  if (restsOn.every((id) => row.lobes.some((lobe) => lobe.id === id))) return { about, among: 'lobe' };
  return { about, ...knownAmong(row, lot) };
}

/** One question of one id, at its strongest: what is asked of the lobe comes up with each lot of lifts. */
function onceEach(questions: readonly AssessedQuestion[]): AssessedQuestion[] {
  const found = new Map<string, AssessedQuestion>();
  for (const question of questions)
    if (found.get(question.id)?.weight !== 'strong') found.set(question.id, question);
  return [...found.values()];
}

/** Exchanged, both figures are right under the other’s name: no other slip of one of them is a guess worth asking. */
function besidesExchanged(questions: readonly AssessedQuestion[]): readonly AssessedQuestion[] {
  const exchanged = questions.find(({ code, answered }) => code === EXCHANGED && answered?.found !== false);
  if (exchanged === undefined) return questions;
  return questions.filter(
    (each) =>
      each === exchanged ||
      each.answered !== undefined ||
      !each.restsOn.every((id) => exchanged.restsOn.includes(id)),
  );
}

/** What is asked of one row: of a pass that stands apart from the others only that, since nothing else rests on it. */
function askedOfRow(
  evidence: Evidence,
  row: SheetRow,
  rows: readonly SheetRow[],
  tolerances: Tolerances | undefined,
): AssessedQuestion[] {
  const apart = passesApartQuestion(row, evidence.answers);
  const aside = new Set(apart.flatMap(({ restsOn }) => restsOn));
  const slips = digitSlips(evidence, row, rows);
  const others = onceEach([
    // What siblings alone say is one guess among others, and the last of them.
    ...slips.filter(({ weight }) => weight === 'strong'),
    ...ofRow(evidence, row, rows, tolerances),
    ...slips.filter(({ weight }) => weight === 'weak'),
  ]).filter(({ restsOn }) => restsOn.length === 0 || !restsOn.every((id) => aside.has(id)));
  return [...oncePerSlip(besidesExchanged(others)), ...apart];
}

/** Everything that the figures of the rows raise, valve by valve; what most of a side raise is asked of the side. */
export function rowQuestions(
  evidence: Evidence,
  rows: readonly SheetRow[],
  tolerances?: Tolerances,
): AssessedQuestion[] {
  const asked = onceEach(rows.flatMap((row) => askedOfRow(evidence, row, rows, tolerances)));
  return onceOfSheet(evidence, onceOfCylinder(evidence, rows, onceOfSide(evidence, rows, asked)));
}
