import { defined } from '../../../../../shared/defined.ts';
import { allowance } from '../../../kit/allowances.ts';
import type { SheetValve } from '../../../valve-sheet/types.ts';
import { placeOf } from '../../common/said.ts';
import type { Spring } from '../../evidence.ts';
import type { LobeOfSetUp } from '../../ratio/compared/lobes-read.ts';
import { isTooCoarse } from '../../ratio/read/dial.ts';
import type { SheetOddDetail } from './detail.ts';
import type { ArmLot } from './lots-of-swaps.ts';
import type { SheetRow } from './rows.ts';

/** A lobe read with a caliper on a loose cam reads low; it is compared with such alone. */
export const byCaliper = (row: SheetRow): boolean => row.lobes.some(({ tool }) => tool === 'caliper');

const mean = (values: readonly number[]): number | undefined =>
  values.length === 0 ? undefined : values.reduce((sum, each) => sum + each, 0) / values.length;

/** The valve's own lift on a spring: of the sheet, else of a set-up with the arm that sits there. */
function liftOf(row: SheetRow, spring: Spring, lots: readonly ArmLot[]): number | undefined {
  const own = row.lifts.find((lot) => lot.spring === spring);
  if (own !== undefined && own.aside !== true)
    return isTooCoarse(own.readings) ? undefined : own.figure.value;
  const elsewhere = lots.filter(
    (lot) =>
      lot.spring === spring &&
      lot.method.endsWith('|out') &&
      placeOf(lot) === placeOf(row) &&
      (row.armId === undefined || lot.armId === row.armId),
  );
  const values = elsewhere.flatMap(({ value }) => value ?? []);
  const alike = Math.max(...values) - Math.min(...values) <= allowance('odd-beyond');
  return values.length === elsewhere.length && alike ? mean(values) : undefined;
}

/** Of a lobe that is not on the sheet what set-ups read at the lifter, where they agree. */
function lobeOfSetUps(row: SheetRow, ofSetUps: readonly LobeOfSetUp[]): number | undefined {
  const values = ofSetUps.filter((each) => placeOf(each) === placeOf(row)).map(({ value }) => value);
  return Math.max(...values) - Math.min(...values) <= 2 * allowance('repeat') ? mean(values) : undefined;
}

/**
 * How often it was read with the arm that sits there: a slip is ruled out before a part is moved. `anyArm`: with whichever
 * arm, where it was as far off with each.
 */
export function passesOf(
  row: SheetRow | undefined,
  spring: Spring,
  lots: readonly ArmLot[],
  { ofSetUps, anyArm }: { readonly ofSetUps: readonly LobeOfSetUp[]; readonly anyArm: boolean },
): SheetOddDetail['passes'] {
  if (row === undefined) return { lift: 0, lobe: 0 };
  const own = lots.filter(
    (lot) =>
      lot.spring === spring &&
      placeOf(lot) === placeOf(row) &&
      (anyArm || lot.armId === undefined || row.armId === undefined || lot.armId === row.armId),
  );
  const lobes = ofSetUps.filter((each) => placeOf(each) === placeOf(row)).flatMap(({ passes }) => passes);
  return {
    lift: own.reduce((sum, { passes }) => sum + passes, 0),
    lobe: row.lobes.length + lobes.length,
  };
}

/** What of a row may be set against its siblings. */
export function asSibling(
  row: SheetRow,
  spring: Spring,
  {
    calipers,
    lots,
    ofSetUps,
    inDoubt,
  }: { calipers: boolean; lots: readonly ArmLot[]; ofSetUps: readonly LobeOfSetUp[]; inDoubt: boolean },
): SheetValve {
  const place = { cylinder: row.cylinder, valve: row.valve };
  if (inDoubt) return place;
  const lobeLift =
    row.lobes.length === 0
      ? calipers
        ? undefined
        : lobeOfSetUps(row, ofSetUps)
      : byCaliper(row) === calipers && !isTooCoarse(row.lobes)
        ? row.lobe?.value
        : undefined;
  return { ...place, ...defined({ lobeLift, valveLift: liftOf(row, spring, lots) }) };
}
