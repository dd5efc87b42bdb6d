import { beforeNamed, type KnownBefore } from '../../common/named-late.ts';
import { amongLots, type LiftLot, type SheetRow } from './rows.ts';

/** What tells the doubts of a lot from those of another, and what told them before its arm was named. */
export function knownAmong(
  row: Pick<SheetRow, 'everyLift'>,
  lot: Omit<LiftLot, 'figure'>,
): { readonly among: string; readonly before?: KnownBefore } {
  const { armId, ...unnamed } = lot;
  const everyLift = row.everyLift.map((each) => {
    const { armId: named, ...others } = each;
    return named === armId ? others : each;
  });
  return {
    among: amongLots(row, lot),
    ...beforeNamed(armId, lot.readings, amongLots({ everyLift }, unnamed)),
  };
}
