import { sideOfValve } from '../../../../../shared/schemas/words.ts';
import { medianKnown } from '../../../valve-sheet/siblings.ts';
import type { LiftLot, SheetRow } from './rows.ts';

/** As many others as make a middle. */
const FEWEST = 2;

/**
 * The middle of the other valves of that side on one spring [m]: of `lifts` with the arms that are on them now, of
 * `everyLift` with whatever arm they were read.
 */
export function middleOfSiblings(
  rows: readonly SheetRow[],
  row: SheetRow,
  spring: LiftLot['spring'],
  lots: 'lifts' | 'everyLift',
): number | undefined {
  const others = rows
    .filter((each) => each !== row && sideOfValve(each.valve) === sideOfValve(row.valve))
    .flatMap((each) => each[lots].filter((lot) => lot.spring === spring))
    .flatMap(({ figure }) => figure.value ?? []);
  return others.length < FEWEST ? undefined : medianKnown(others);
}
