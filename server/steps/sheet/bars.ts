import { fromSi } from '../../../shared/quantities/units.ts';
import type { Component } from '../../../views/parts/part.ts';
import type { OnSpring, Sheet } from '../../assessment/sheet/sheet.ts';
import { cellFor, type Side } from '../../assessment/sheet/valve-rows.ts';
import { rulerOf } from '../../drawings/drawing.ts';
import { perValve, type ValveBar } from '../../drawings/per-valve.ts';
import { allowance } from '../../mechanics/kit/allowances.ts';
import { ON_SPRING } from './sheet-text.ts';

const inches = (si: number): number => fromSi(si, 'in').value;

function barsOf(sheet: Sheet, on: OnSpring, side: Side): ValveBar[] {
  const odd = new Set(
    on.sides
      .flatMap((each) => each.odd)
      .filter((each) => each.valve === side)
      .map((each) => each.cylinder),
  );
  return sheet.rows
    .filter((row) => row.valve === side)
    .map((row) => {
      const cell = cellFor(row, 'valve-lift', on.spring);
      return {
        cylinder: row.cylinder,
        odd: odd.has(row.cylinder),
        ...(cell?.value === undefined ? {} : { value: inches(cell.value) }),
        ...(cell?.low === undefined ? {} : { low: inches(cell.low) }),
        ...(cell?.high === undefined ? {} : { high: inches(cell.high) }),
      };
    });
}

/** A drawing for each side that has three readings or more: fewer have no middle. */
export function perValveDrawings(sheet: Sheet, on: OnSpring): Component[] {
  return on.sides.flatMap(({ side, medians }) => {
    const bars = barsOf(sheet, on, side);
    if (medians.valveLift === undefined || bars.filter((bar) => bar.value !== undefined).length < 3)
      return [];
    const drawing = perValve(
      {
        title: `Valve lift, ${ON_SPRING[on.spring]}, ${side}`,
        median: inches(medians.valveLift),
        oddBeyond: inches(allowance('odd-beyond')),
        bars,
      },
      { id: `drawing-${on.spring}-${side}`, ruler: rulerOf('inch') },
    );
    return [{ template: '/parts/drawing', data: drawing }];
  });
}
