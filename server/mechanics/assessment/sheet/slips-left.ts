import { sideOfValve } from '../../../../shared/schemas/words.ts';
import { allowance } from '../../kit/allowances.ts';
import type { AssessedQuestion } from '../assessment.ts';
import { placeOf } from '../common/said.ts';
import type { Evidence } from '../evidence.ts';
import { readsAsStamped } from './as-marked.ts';
import type { ArmLot } from './lots-of-swaps.ts';
import type { LiftLot, SheetRow } from './rows.ts';
import { middleOfSiblings } from './siblings-middle.ts';

/** Slips of one reading: another valve, or another place of the same arm, that reads alike speaks against them. */
const OF_ONE_READING: ReadonlySet<string> = new Set([
  'turn-miscounted',
  'hand-read-backwards',
  'digits-swapped',
  'lash-left-in',
]);

const isAlike = (a: number, b: number | undefined): boolean =>
  b !== undefined && Math.abs(a - b) <= allowance('odd-beyond');

/** It reads like its siblings as it is. */
function likeSiblings(
  row: SheetRow,
  { spring, figure: { value } }: LiftLot,
  rows: readonly SheetRow[],
): boolean {
  if (value === undefined) return false;
  return isAlike(value, middleOfSiblings(rows, row, spring, 'lifts'));
}

/** The same arm reads so on another valve of that side. */
function likeElsewhere(
  row: SheetRow,
  { spring, armId, figure: { value } }: LiftLot,
  lots: readonly ArmLot[],
): boolean {
  if (value === undefined || armId === undefined) return false;
  return lots.some(
    (lot) =>
      lot.armId === armId &&
      lot.spring === spring &&
      sideOfValve(lot.valve) === sideOfValve(row.valve) &&
      placeOf(lot) !== placeOf(row) &&
      isAlike(value, lot.value),
  );
}

/**
 * The questions without slips of one reading that other readings speak against: what seven siblings, or the same arm on
 * another valve, read alike was not misread on this one, nor what its own stamp has. What was answered stays.
 */
export function slipsLeft(
  evidence: Evidence,
  questions: readonly AssessedQuestion[],
  rows: readonly SheetRow[],
  lots: readonly ArmLot[],
): AssessedQuestion[] {
  const told = new Set(
    rows.flatMap((row) =>
      row.everyLift
        .filter(
          (lot) =>
            likeSiblings(row, lot, rows) ||
            likeElsewhere(row, lot, lots) ||
            readsAsStamped(evidence, row, lot),
        )
        .flatMap(({ readings }) => readings.map(({ id }) => id)),
    ),
  );
  const isTold = ({ code, about, answered, restsOn }: AssessedQuestion): boolean =>
    OF_ONE_READING.has(code) &&
    about.of === 'valve' &&
    answered === undefined &&
    restsOn.length > 0 &&
    restsOn.every((id) => told.has(id));
  return questions.filter((question) => !isTold(question));
}
