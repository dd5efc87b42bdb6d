import { sideOfValve, type ValveName } from '../../../shared/schemas/words.ts';
import { SIDES } from '../../../shared/sides.ts';
import { type Order, rowsInOrder } from '../../assessment/sheet/of-sheet.ts';
import { type CallContext, valveName } from '../../call/context.ts';
import { shownSetUps } from '../../call/shown-set-up.ts';
import type { Side, ValvePlace } from '../../mechanics/assessment/evidence.ts';
import type { SheetDetail } from '../../mechanics/assessment/sheet/rows/detail.ts';
import { cellOf } from './sheet-text.ts';

/** What is next reads a valve once more, or in another way. */
const READS = /^read-/;
/** What is next reads the valves that are left. */
const ROWS = 'rows';

/** The valve that is to be read once more: what is typed must not go to another. */
function askedValve({ assessment: { next } }: CallContext): ValvePlace | undefined {
  if (next?.step !== 'sheet' || !READS.test(next.action)) return undefined;
  return next.about.of === 'valve' ? next.about : undefined;
}

interface Lift extends ValvePlace {
  readonly at: 'lobe' | 'valve';
}

/** Every lift that stands, on the sheet or in a set-up: what is next counts both. */
function liftsOf(context: CallContext, sheet: SheetDetail): Lift[] {
  const ofSheet = sheet.rows.flatMap((row) =>
    (['lobe', 'valve'] as const).flatMap((at): Lift[] =>
      cellOf(row, `${at}-lift`) === undefined ? [] : [{ cylinder: row.cylinder, valve: row.valve, at }],
    ),
  );
  const ofSetUps = shownSetUps(context).flatMap(({ setUp: { cylinder, valve }, readings }) =>
    readings.flatMap(({ kind, replacedBy, struck }): Lift[] =>
      replacedBy === undefined && !struck && (kind === 'lobe-lift' || kind === 'valve-lift')
        ? [{ cylinder, valve, at: kind === 'lobe-lift' ? 'lobe' : 'valve' }]
        : [],
    ),
  );
  return [...ofSheet, ...ofSetUps];
}

export interface NextValve {
  /** Left open where another valve of the side is wanted, and nobody said how many there are. */
  readonly cylinder?: number;
  readonly valve: ValveName;
}

/**
 * The valve that what is next names; else the first in order that has no lift yet, of a side that was begun before one
 * that was not.
 */
export function nextValve(context: CallContext, sheet: SheetDetail, order: Order): NextValve {
  const asked = askedValve(context);
  if (asked !== undefined) return asked;
  const rows = rowsInOrder(sheet, order);
  const lifts = liftsOf(context, sheet);
  const sideOf = ({ valve }: ValvePlace): Side => sideOfValve(valve);
  const begun = SIDES.filter((side) => lifts.some((lift) => sideOf(lift) === side));
  const read = new Set(lifts.filter(({ at }) => at === 'valve').map(valveName));
  const left = rows.filter((row) => !read.has(valveName(row)));
  const ofBegun = left.find((row) => begun.includes(sideOf(row)));
  if (ofBegun !== undefined) return ofBegun;
  const { next } = context.assessment;
  if (next?.step === 'sheet' && next.action === ROWS) {
    const many = (side: Side) => lifts.filter((lift) => lift.at === 'valve' && sideOf(lift) === side).length;
    const [fewest] = begun.toSorted((a, b) => many(a) - many(b));
    const valve = sheet.names.find((name) => sideOfValve(name) === fewest);
    if (valve !== undefined) return { valve };
  }
  const first = left[0];
  return { cylinder: first?.cylinder ?? sheet.orders[order][0] ?? 1, valve: first?.valve ?? 'intake' };
}
