import { GAP_KINDS } from '../../../shared/schemas/sheet.ts';
import { type RatioOfLifts, ratioOfFigures } from '../../mechanics/valve-sheet/figures.ts';
import { judgeSide } from '../../mechanics/valve-sheet/odd-valves.ts';
import { cylinderOrder } from '../../mechanics/valve-sheet/orders.ts';
import type { OddValve, SheetValve, SideJudged } from '../../mechanics/valve-sheet/types.ts';
import type { Arm } from '../../records/arms/arms.ts';
import { nowOnValves } from '../../records/arms/placements.ts';
import { stillStanding } from '../../records/corrections/entries.ts';
import type { SheetReading } from '../../records/sheet/sheet-table.ts';
import type { BuildRecord } from '../../records/whole-build/build-record.ts';
import { limitsFor } from '../consequences/figures.ts';
import { type Swap, swapsOf, swapToDo } from './swaps.ts';
import { cellFor, cylindersOf, SIDES, type ValveRow, valveRows } from './valve-rows.ts';

export type Order = 'firing' | 'bank';

/** The valves as read on one spring: a light and a running lift are two quantities. */
export interface OnSpring {
  readonly spring: SheetReading['spring'];
  readonly ratios: ReadonlyMap<string, RatioOfLifts>;
  readonly sides: readonly (Omit<SideJudged, 'odd'> & {
    readonly odd: readonly (OddValve & { readonly swap?: string })[];
  })[];
  readonly swaps: readonly Swap[];
}

export interface Sheet {
  readonly order: Order;
  readonly cylinders: readonly number[];
  readonly rows: readonly ValveRow[];
  readonly springs: readonly OnSpring[];
  readonly readings: readonly SheetReading[];
  readonly arms: readonly Arm[];
  /** Some gap on it is short. */
  readonly stop: boolean;
}

const nameOf = (row: ValveRow): string => `${row.cylinder} ${row.valve}`;

/** Single figures only: bounds are kept, but no middle is made of them to compare with. */
function asValve(row: ValveRow, spring: SheetReading['spring']): SheetValve {
  const lobeLift = cellFor(row, 'lobe-lift')?.value;
  const valveLift = cellFor(row, 'valve-lift', spring)?.value;
  return {
    cylinder: row.cylinder,
    valve: row.valve,
    ...(lobeLift === undefined ? {} : { lobeLift }),
    ...(valveLift === undefined ? {} : { valveLift }),
  };
}

function ratiosOf(rows: readonly ValveRow[], spring: SheetReading['spring']): Map<string, RatioOfLifts> {
  const found = new Map<string, RatioOfLifts>();
  for (const row of rows) {
    const [lobe, valve] = [cellFor(row, 'lobe-lift'), cellFor(row, 'valve-lift', spring)];
    if (lobe !== undefined && valve !== undefined) found.set(nameOf(row), ratioOfFigures(valve, lobe));
  }
  return found;
}

function onSpring(
  spring: SheetReading['spring'],
  rows: readonly ValveRow[],
  standing: readonly SheetReading[],
  names: ReadonlyMap<string, string>,
): OnSpring {
  const judged = SIDES.map((side) =>
    judgeSide(
      side,
      rows.map((row) => asValve(row, spring)),
    ),
  );
  const swaps = judged.flatMap((side) => swapsOf(side, spring, standing, rows, names));
  return {
    spring,
    ratios: ratiosOf(rows, spring),
    sides: judged.map((side) => ({
      ...side,
      odd: side.odd.map((odd) => {
        const swap = swapToDo(odd, side, rows, swaps, names);
        return swap === undefined ? odd : { ...odd, swap };
      }),
    })),
    swaps,
  };
}

/** The per-valve sheet of a build: the service behind the JSON route and the page. */
export function sheetOf(record: BuildRecord, order: Order): Sheet {
  const { build, sheetReadings: readings, arms, limits } = record;
  const { engine } = build.spec;
  const standing = stillStanding(readings);
  const now = nowOnValves(record.placements);
  const sits = new Map(now.map(({ cylinder, valve, armId }) => [`${cylinder} ${valve}`, armId]));
  const cylinders = cylinderOrder(
    order === 'firing' ? engine?.firingOrder : engine?.bankOrder,
    cylindersOf(build.spec, standing),
  );
  const figures = {
    intake: limitsFor(limits, 'intake').figures,
    exhaust: limitsFor(limits, 'exhaust').figures,
  };
  const rows = valveRows(cylinders, standing, sits, {
    lifter:
      engine?.lifter === undefined ? undefined : engine.lifter.startsWith('solid') ? 'solid' : 'hydraulic',
    limitOf: (kind, side) => figures[side][kind],
  });
  const names = new Map(arms.map((arm) => [arm.id, arm.name]));
  const lifts = rows.flatMap((row) => row.cells).filter((cell) => cell.kind === 'valve-lift');
  const springs = [...new Set(lifts.map((cell) => cell.spring))];
  const hasLobes = rows.some((row) => cellFor(row, 'lobe-lift') !== undefined);
  const seen = springs.length === 0 && hasLobes ? (['not-said'] as const) : springs;
  return {
    order,
    cylinders,
    rows,
    springs: seen.map((spring) => onSpring(spring, rows, standing, names)),
    readings,
    arms,
    stop: rows.some((row) =>
      row.cells.some((cell) => cell.verdict === 'short' && GAP_KINDS.some((kind) => kind === cell.kind)),
    ),
  };
}
