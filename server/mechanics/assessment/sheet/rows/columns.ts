import { sideOfValve } from '../../../../../shared/schemas/words.ts';
import type { SheetEvidence, Side, Spring } from '../../evidence.ts';
import type { SheetRow } from './rows.ts';

/** The lifts of one side at one end, on one spring. */
export interface Column {
  readonly side: Side;
  readonly spring: Spring;
  readonly name: 'lobe lift' | 'valve lift';
  /** The readings of each valve that has any. */
  readonly rows: readonly (readonly SheetEvidence[])[];
}

/** Every column of the sheet that anything was read of. */
export function columnsOf(rows: readonly SheetRow[]): Column[] {
  const sides: readonly Side[] = ['intake', 'exhaust'];
  const figures = (readings: readonly SheetEvidence[]) =>
    readings.filter(({ reading }) => (reading.value ?? 0) > 0);
  return sides.flatMap((side) => {
    const own = rows.filter(({ valve }) => sideOfValve(valve) === side);
    const springs = [...new Set(own.flatMap(({ lifts }) => lifts.map(({ spring }) => spring)))].sort();
    const lifts = springs.map(
      (spring): Column => ({
        side,
        spring,
        name: 'valve lift',
        rows: own.flatMap((row) =>
          row.lifts.filter((lot) => lot.spring === spring).map(({ readings }) => figures(readings)),
        ),
      }),
    );
    const lobes: Column = {
      side,
      spring: 'not-said',
      name: 'lobe lift',
      rows: own.map(({ lobes: readings }) => figures(readings)),
    };
    return [...lifts, lobes].map((column) => ({
      ...column,
      rows: column.rows.filter((row) => row.length > 0),
    }));
  });
}
