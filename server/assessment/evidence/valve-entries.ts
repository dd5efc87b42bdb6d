import { defined } from '../../../shared/defined.ts';
import { UNITS } from '../../../shared/quantities/units.ts';
import { siIf, siOf } from '../../../shared/schemas/entered.ts';
import type { Gauged } from '../../../shared/schemas/gauged.ts';
import type {
  Bounds,
  LashEvidence,
  SheetEvidence,
  TipMarkEvidence,
} from '../../mechanics/assessment/evidence.ts';
import type { LoggedLash } from '../../records/lash-log/lash-log.ts';
import type { SheetReading } from '../../records/sheet/sheet-table.ts';
import type { TipMark } from '../../records/tip-marks/tip-mark-table.ts';
import { entryEvidence } from './entry.ts';

function boundsOf({ value, low, high, unit }: Gauged): Bounds {
  const si = (length: number | undefined) => (length === undefined ? undefined : length * UNITS[unit].toSi);
  return defined({ value: si(value), low: si(low), high: si(high) });
}

export function sheetEvidence(
  entry: SheetReading,
  taken: Pick<SheetEvidence, 'armId' | 'putOnLater' | 'perTurn' | 'soldAsThen'>,
  entered: number,
): SheetEvidence {
  const { cylinder, valve, kind, reading, tool, spring, lifter, arms } = entry;
  return {
    ...entryEvidence(entry, entered),
    cylinder,
    valve,
    kind,
    reading: boundsOf(reading),
    readAs: reading.readAs,
    tool,
    spring,
    lifter,
    arms,
    ...taken,
  };
}

/** A line of the lash log in SI. */
export function lashEvidence(logged: LoggedLash): LashEvidence {
  const { reading, moment, engine, nut, on, entered, toldLater, shim } = logged;
  return {
    ...entryEvidence(reading, entered),
    cylinder: reading.cylinder,
    valve: reading.valve,
    gap: boundsOf(reading.reading),
    readAs: reading.reading.readAs,
    moment,
    engine,
    nut,
    day: on,
    ...(toldLater ? { toldLater } : {}),
    ...defined({ shim: siIf(shim), armId: reading.armId }),
  };
}

/** A tip mark in SI; `entered` is the line of its first entry. */
export function markEvidence(mark: TipMark, entered: number): TipMarkEvidence {
  const { cylinder, valve, width, side, off, pushrod, pushrodOver, shims, stem, readAs } = mark;
  const { found, spring, armId } = mark;
  return {
    ...entryEvidence(mark, entered),
    cylinder,
    valve,
    width: siOf(width),
    side,
    ...defined({
      off: siIf(off),
      pushrod: siIf(pushrod),
      pushrodOver: pushrodOver === 'not-said' ? undefined : pushrodOver,
      shims: siIf(shims),
      stem: siIf(stem),
      found: found === 'not-said' ? undefined : found,
      spring: spring === 'not-said' ? undefined : spring,
      armId,
    }),
    readAs,
  };
}
