import { SHEET_KINDS } from '../../../shared/schemas/sheet.ts';
import { VALVES } from '../../../shared/schemas/words.ts';
import type { Component } from '../../../views/parts/part.ts';
import type { OnSpring, Sheet } from '../../assessment/sheet/sheet.ts';
import { SIDES, type Side } from '../../assessment/sheet/valve-rows.ts';
import { chosenBySide } from '../../call/chosen-set-up.ts';
import { type CallContext, valveName } from '../../call/context.ts';
import { beside, besideWide, filledColumns, said, section } from '../../call/report-parts.ts';
import { perValveDrawings } from './bars.ts';
import { oddCards, swapsTable, wornLobes } from './odd-valves.ts';
import { gapsOnSheet, liftsTable } from './sheet-tables.ts';
import { ON_SPRING } from './sheet-text.ts';

/** Only valves that something was read of: an empty row says nothing on paper. */
const readOnly = (sheet: Sheet): Sheet => ({
  ...sheet,
  rows: sheet.rows.filter((row) => row.cells.length > 0),
});

/** What no longer stands on the sheet, with the reason: it stays on record. */
function struckOnes({ readings }: Sheet): string[] {
  return readings.flatMap((old) => {
    const later = readings.find(({ id }) => id === old.replacedBy);
    if (later === undefined) return [];
    const what = `${SHEET_KINDS[old.kind]} ${old.cylinder} ${old.valve}: ${old.reading.readAs}`;
    return [
      later.struck
        ? `${what}, struck out by ${later.by}: ${later.reason}`
        : `${what}, now ${later.reading.readAs} by ${later.by}: ${later.reason}`,
    ];
  });
}

/** A valve whose gaps stand before and after in the part on its ratio is not told twice. */
function withoutChosen(sheet: Sheet, context: CallContext): Sheet {
  const told = new Set(chosenBySide(context).map(({ setUp }) => valveName(setUp)));
  return { ...sheet, rows: sheet.rows.filter((row) => !told.has(valveName(row))) };
}

/** Odd valves that no swap has decided yet; what a swap decides stands with it. */
function undecided(on: OnSpring): OnSpring {
  const decided = new Set(on.swaps.flatMap(({ places }) => places));
  const sides = on.sides.map((side) => ({
    ...side,
    odd: side.odd.filter((odd) => !decided.has(valveName(odd))),
  }));
  return { ...on, sides };
}

const ofSide = (sheet: Sheet, side: Side): Sheet => ({
  ...sheet,
  rows: sheet.rows.filter(({ valve }) => valve === side),
});

/** Intakes and exhausts beside one another; where there is one kind alone, its drawing stands beside it. */
function liftsOf(sheet: Sheet, on: OnSpring, base: string): Component {
  const read = SIDES.filter((side) => ofSide(sheet, side).rows.length > 0);
  const tables = read.map((side, index) => {
    const { template, data } = liftsTable(ofSide(sheet, side), on, base);
    const caption = `${VALVES[side]} valves, ${ON_SPRING[on.spring]}, inches`;
    return filledColumns({ template, data: { ...data, caption, ...(index > 0 ? { note: undefined } : {}) } });
  });
  if (tables.length > 1) return beside(...tables);
  const drawings = perValveDrawings(sheet, on).map(({ template, data }) => ({
    template,
    data: { ...data, table: undefined },
  }));
  return besideWide(...tables, ...drawings.slice(0, 1));
}

/** Every valve that was read, the odd one, what settles it, and what the swaps decide. */
export function sheetReport(context: CallContext, loaded: Sheet): Component[] {
  if (loaded.readings.length === 0) return [];
  const sheet = readOnly(loaded);
  return [
    section('Every valve', [
      ...sheet.springs.flatMap((on) => [
        ...wornLobes(on),
        ...oddCards(undecided(on)),
        ...swapsTable(on),
        liftsOf(sheet, on, context.base),
      ]),
      ...gapsOnSheet(withoutChosen(sheet, context)),
      ...said('Struck out or replaced on the sheet', struckOnes(sheet)),
    ]),
  ];
}
