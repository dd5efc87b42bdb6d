import { UNITS } from '../../../shared/quantities/units.ts';
import type { BuildSpec } from '../../../shared/schemas/build-spec.ts';
import { GAP_KINDS, type GapKind, SHEET_KINDS, type SheetKind } from '../../../shared/schemas/sheet.ts';
import { keysOf } from '../../../shared/schemas/words.ts';
import { sinkingReasons, verdictOfGap } from '../../mechanics/consequences/gap-row.ts';
import type { GapRow, LimitFigure } from '../../mechanics/consequences/types.ts';
import type { Verdict } from '../../mechanics/kit/verdict.ts';
import { type Pass, type SheetFigure, together } from '../../mechanics/valve-sheet/figures.ts';
import type { SheetReading } from '../../records/sheet/sheet-table.ts';
import { gapInSi } from '../consequences/measured-gaps.ts';

export type Side = 'intake' | 'exhaust';
export const SIDES: readonly Side[] = ['intake', 'exhaust'];

/** What is on the sheet of one kind on one valve. */
export interface SheetCell extends SheetFigure {
  readonly kind: SheetKind;
  readonly spring: SheetReading['spring'];
  readonly readings: readonly SheetReading[];
  readonly verdict?: Verdict;
  readonly because: readonly string[];
}

export interface ValveRow {
  readonly cylinder: number;
  readonly valve: Side;
  readonly armId: string | undefined;
  readonly cells: readonly SheetCell[];
}

const passOf = ({ reading }: SheetReading): Pass => {
  const si = (value: number | undefined) =>
    value === undefined ? undefined : value * UNITS[reading.unit].toSi;
  const [value, low, high] = [si(reading.value), si(reading.low), si(reading.high)];
  return {
    ...(value === undefined ? {} : { value }),
    ...(low === undefined ? {} : { low }),
    ...(high === undefined ? {} : { high }),
  };
};

const isGap = (kind: SheetKind): kind is GapKind => GAP_KINDS.some((gap) => gap === kind);

interface Judge {
  limitOf(kind: GapKind, side: Side): LimitFigure;
  readonly lifter: 'solid' | 'hydraulic' | undefined;
}

function judged(
  kind: SheetKind,
  side: Side,
  newest: SheetReading,
  judge: Judge,
): Pick<GapRow, 'because'> & { verdict?: Verdict } {
  if (!isGap(kind)) return { because: [] };
  const because = sinkingReasons(newest, judge.lifter);
  const bare = verdictOfGap(gapInSi(newest), judge.limitOf(kind, side).value);
  return { verdict: bare === 'clear' && because.length > 0 ? 'close' : bare, because };
}

function cellOf(kind: SheetKind, all: readonly SheetReading[], judge: Judge): SheetCell | undefined {
  const newest = all.at(-1);
  if (newest === undefined) return undefined;
  // After a swap only what was read with the arm that sat there last is the valve's figure. The lobe stays.
  const readings = kind === 'lobe-lift' ? all : all.filter((each) => each.armId === newest.armId);
  const sinks = readings.some((each) => each.lifter === 'hydraulic');
  // A lash is set again again and again: its readings are a log, and the newest one stands.
  const newestAlone = isGap(kind) || kind === 'lash';
  const figure = newestAlone ? together([passOf(newest)], true) : together(readings.map(passOf), !sinks);
  if (figure === undefined) return undefined;
  return { ...figure, kind, spring: newest.spring, readings, ...judged(kind, newest.valve, newest, judge) };
}

function cellsOf(here: readonly SheetReading[], judge: Judge): SheetCell[] {
  return keysOf(SHEET_KINDS).flatMap((kind) => {
    const of = here.filter((each) => each.kind === kind);
    // A lift at the valve is another quantity on another spring; everything else is one column.
    const springs = kind === 'valve-lift' ? [...new Set(of.map((each) => each.spring))] : [undefined];
    return springs.flatMap((spring) => {
      const cell = cellOf(
        kind,
        spring === undefined ? of : of.filter((each) => each.spring === spring),
        judge,
      );
      return cell === undefined ? [] : [cell];
    });
  });
}

/** How many cylinders the sheet has: those of the engine, or as far as was read. */
export function cylindersOf(spec: BuildSpec, readings: readonly SheetReading[]): number {
  return Math.max(spec.engine?.cylinders ?? 0, ...readings.map((each) => each.cylinder), 0);
}

/** The sheet's rows, every cylinder in the given order, intake and exhaust. */
export function valveRows(
  order: readonly number[],
  standing: readonly SheetReading[],
  sits: ReadonlyMap<string, string>,
  judge: Judge,
): ValveRow[] {
  const these = standing.filter((each) => each.arms === 'these');
  return order.flatMap((cylinder) =>
    SIDES.map((valve) => ({
      cylinder,
      valve,
      armId: sits.get(`${cylinder} ${valve}`),
      cells: cellsOf(
        these.filter((each) => each.cylinder === cylinder && each.valve === valve),
        judge,
      ),
    })),
  );
}

export const cellFor = (
  row: ValveRow,
  kind: SheetKind,
  spring?: SheetReading['spring'],
): SheetCell | undefined =>
  row.cells.find((cell) => cell.kind === kind && (spring === undefined || cell.spring === spring));
