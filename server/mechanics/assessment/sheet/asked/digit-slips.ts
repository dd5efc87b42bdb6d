import { sideOfValve } from '../../../../../shared/schemas/words.ts';
import { allowance } from '../../../kit/allowances.ts';
import { IN } from '../../../kit/si.ts';
import { digitsAround } from '../../../questions/digits-swapped.ts';
import { ENTER_AGAIN } from '../../../questions/words.ts';
import type { AssessedQuestion } from '../../assessment.ts';
import { answersOf } from '../../common/answers-of.ts';
import { asked } from '../../common/asked.ts';
import { inches, placeOf, valveSubject } from '../../common/said.ts';
import type { Evidence, SheetEvidence } from '../../evidence.ts';
import { knownAmong } from '../rows/known-among.ts';
import type { LiftLot, SheetRow } from '../rows/rows.ts';
import { middleOfSiblings } from '../rows/siblings-middle.ts';

/** What a reading may have been, by other readings: of the same arm on another valve, of this one again, of its siblings. */
interface Expected {
  readonly value: number;
  readonly from: 'arm' | 'again' | 'siblings';
}

function expectedFor(
  rows: readonly SheetRow[],
  row: SheetRow,
  lot: LiftLot,
  reading: SheetEvidence,
): Expected[] {
  const elsewhere = rows
    .filter((each) => placeOf(each) !== placeOf(row) && sideOfValve(each.valve) === sideOfValve(row.valve))
    .flatMap(({ everyLift }) => everyLift)
    .filter(({ armId, spring }) => armId !== undefined && armId === lot.armId && spring === lot.spring);
  const again = lot.readings.filter((each) => each !== reading);
  const middle = middleOfSiblings(rows, row, lot.spring, 'lifts');
  const isLevel = rows.some(
    (each) =>
      placeOf(each) !== placeOf(row) &&
      sideOfValve(each.valve) === sideOfValve(row.valve) &&
      each.everyLift.some(
        ({ spring, figure: { value } }) =>
          spring === lot.spring &&
          value !== undefined &&
          Math.abs(value - (reading.reading.value ?? 0)) <= allowance('repeat'),
      ),
  );
  // Nobody has them the wrong way round twice.
  if (
    again.some(
      (each) => Math.abs((each.reading.value ?? 0) - (reading.reading.value ?? 0)) <= allowance('repeat'),
    )
  )
    return [];
  return [
    ...again.flatMap(({ reading: { value } }) =>
      value === undefined ? [] : [{ value, from: 'again' as const }],
    ),
    ...elsewhere.flatMap(({ figure: { value } }) =>
      value === undefined ? [] : [{ value, from: 'arm' as const }],
    ),
    // One that is level with any of them as it is was said right.
    ...(middle === undefined || isLevel ? [] : [{ value: middle, from: 'siblings' as const }]),
  ];
}

const isMetric = ({ readAs }: SheetEvidence): boolean => readAs.endsWith(' mm');

/** The reading with two digits the other way round, where that is what another reading of it says. */
function slipOf(reading: SheetEvidence, expected: readonly Expected[], middle: number | undefined) {
  const { value } = reading.reading;
  if (value === undefined || value <= 0) return undefined;
  const turned = digitsAround(value / IN, isMetric(reading)).map((inch) => inch * IN);
  const [repeat, odd] = [allowance('repeat') + 1e-9, allowance('odd-beyond')];
  return expected.flatMap((each) => {
    // Nines of thousandths are common between two readings; twice what makes one odd is not. Among its siblings it is odd.
    if (Math.abs(value - each.value) <= (each.from === 'siblings' ? odd : 2 * odd)) return [];
    // Of two readings that are one another's digits the other way round, the one that siblings speak against slipped.
    if (middle !== undefined && Math.abs(value - middle) < Math.abs(each.value - middle)) return [];
    const becomes = turned.find((other) => Math.abs(other - each.value) <= repeat);
    return becomes === undefined ? [] : [{ ...each, becomes }];
  })[0];
}

const SAYS = {
  arm: 'which is what this arm reads on another valve',
  again: 'which is what it read the other time',
  siblings: 'like the others',
} as const;

/**
 * Two digits the wrong way round in one reading of a row, where other readings say what it was. It is asked before a swap
 * or an odd valve is made of it, and strongly where the same arm or the same valve says so.
 */
export function digitSlips(evidence: Evidence, row: SheetRow, rows: readonly SheetRow[]): AssessedQuestion[] {
  return row.everyLift.flatMap((lot) => {
    const middle = middleOfSiblings(rows, row, lot.spring, 'lifts');
    return lot.readings.flatMap((reading) => {
      const slip = slipOf(reading, expectedFor(rows, row, lot, reading), middle);
      if (slip === undefined || reading.reading.value === undefined) return [];
      return [
        asked(
          {
            code: 'digits-swapped',
            weight: slip.from === 'siblings' ? 'weak' : 'strong',
            ask: `Could two digits of the valve lift, ${inches(reading.reading.value)}, be the wrong way round?`,
            size: `The other way round it is ${inches(slip.becomes)}, ${SAYS[slip.from]}.`,
            test: ENTER_AGAIN,
            restsOn: [reading.id],
          },
          {
            about: valveSubject(row),
            step: 'sheet',
            ...knownAmong(row, lot),
            answers: evidence.answers,
            choices: answersOf('digits-swapped'),
          },
        ),
      ];
    });
  });
}
