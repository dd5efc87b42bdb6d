import type { Order, Sheet } from '../../assessment/sheet/sheet.ts';
import { cylindersOf } from '../../assessment/sheet/valve-rows.ts';
import type { CallContext } from '../../call/context.ts';
import { cylinderOrder } from '../../mechanics/valve-sheet/orders.ts';
import { stillStanding } from '../../records/corrections/entries.ts';

/** The same sheet with its rows in the order that is asked for. */
export function inOrder(sheet: Sheet, { build }: CallContext, order: Order): Sheet {
  if (sheet.order === order) return sheet;
  const { engine } = build.spec;
  const cylinders = cylinderOrder(
    order === 'firing' ? engine?.firingOrder : engine?.bankOrder,
    cylindersOf(build.spec, stillStanding(sheet.readings)),
  );
  const rows = cylinders.flatMap((cylinder) => sheet.rows.filter((row) => row.cylinder === cylinder));
  return { ...sheet, order, cylinders, rows };
}
