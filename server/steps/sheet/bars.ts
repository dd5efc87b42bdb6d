import { defined } from '../../../shared/defined.ts';
import { spokenUnits } from '../../../shared/quantities/spoken-units.ts';
import { fromSi } from '../../../shared/quantities/units.ts';
import { sideOfValve } from '../../../shared/schemas/words.ts';
import { type Drawing, rulerOf } from '../../drawings/drawing.ts';
import { perValve, type ValveBar } from '../../drawings/per-valve.ts';
import { placeOf } from '../../mechanics/assessment/common/said.ts';
import type { Spring } from '../../mechanics/assessment/evidence.ts';
import type { SheetRowDetail, SheetSideDetail } from '../../mechanics/assessment/sheet/detail.ts';
import { allowance } from '../../mechanics/kit/allowances.ts';
import { cellOf, ON_SPRING } from './sheet-text.ts';

const inches = (si: number): number => fromSi(si, 'in').value;
const inchesIf = (si: number | undefined) => (si === undefined ? undefined : inches(si));

/** `3`; of a second valve of its kind `3 no. 2`. */
const barName = ({ cylinder, valve }: SheetRowDetail): string =>
  `${cylinder}${valve.includes('-') ? ` no. ${valve.slice(-1)}` : ''}`;

function barOf(row: SheetRowDetail, { spring, odd }: SheetSideDetail): ValveBar {
  const cell = cellOf(row, 'valve-lift', spring);
  return {
    cylinder: row.cylinder,
    name: barName(row),
    odd: odd.some((each) => placeOf(each) === placeOf(row)),
    ...defined({
      value: inchesIf(cell?.value),
      low: inchesIf(cell?.low),
      high: inchesIf(cell?.high),
    }),
  };
}

/** A drawing for each side that has three readings or more: fewer have no middle. */
export function perValveDrawings(
  rows: readonly SheetRowDetail[],
  sides: readonly SheetSideDetail[],
  spring: Spring,
): Drawing[] {
  return sides
    .filter((side) => side.spring === spring)
    .flatMap((side) => {
      const own = rows.filter(({ valve }) => sideOfValve(valve) === side.side);
      const bars = own.map((row) => barOf(row, side));
      const { valveLift } = side.medians;
      if (valveLift === undefined || bars.filter(({ value }) => value !== undefined).length < 3) return [];
      return [
        perValve(
          {
            title: `Valve lift, ${ON_SPRING[spring]}, ${side.side}`,
            median: inches(valveLift),
            oddBeyond: inches(allowance('odd-beyond')),
            bars,
          },
          { id: `drawing-${spring}-${side.side}`, ruler: rulerOf(spokenUnits()) },
        ),
      ];
    });
}
