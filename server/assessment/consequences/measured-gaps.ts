import { UNITS } from '../../../shared/quantities/units.ts';
import { GAP_KINDS, type GapKind } from '../../../shared/schemas/sheet.ts';
import type { MeasuredGap } from '../../mechanics/consequences/types.ts';
import { allowance } from '../../mechanics/kit/allowances.ts';
import type { SetUp } from '../../records/set-ups/set-ups.ts';
import type { SheetReading } from '../../records/sheet/sheet-table.ts';

/** A gap of the sheet in SI. One figure is good to the allowance of such a reading; two gauges are their bounds. */
export function gapInSi({ reading, lifter }: SheetReading): MeasuredGap {
  const { unit, value, low, high, readAs } = reading;
  const si = (each: number) => each * UNITS[unit].toSi;
  if (value !== undefined) {
    const off = allowance('closed-gap');
    return { value: si(value), low: si(value) - off, high: si(value) + off, readAs, lifter };
  }
  return {
    ...(low === undefined ? {} : { low: si(low) }),
    ...(high === undefined ? {} : { high: si(high) }),
    readAs,
    lifter,
  };
}

export interface MeasuredOnValve {
  readonly these: Partial<Record<GapKind, MeasuredGap>>;
  readonly before: Partial<Record<GapKind, MeasuredGap>>;
  /** Gaps that were read with another arm on this valve, and so say nothing of the set-up's. */
  readonly otherArm: readonly SheetReading[];
  readonly used: readonly SheetReading[];
}

/** The newest standing gap of each kind on the set-up's valve. */
export function measuredOn(setUp: SetUp, standing: readonly SheetReading[]): MeasuredOnValve {
  const here = standing.filter((each) => each.cylinder === setUp.cylinder && each.valve === setUp.valve);
  const isOther = (each: SheetReading) =>
    each.arms === 'these' &&
    each.armId !== undefined &&
    setUp.armId !== undefined &&
    each.armId !== setUp.armId;
  const newest = (kind: GapKind, arms: SheetReading['arms']) =>
    here.findLast((each) => each.kind === kind && each.arms === arms && !isOther(each));
  const used: SheetReading[] = [];
  const pick = (arms: SheetReading['arms']) => {
    const found: Partial<Record<GapKind, MeasuredGap>> = {};
    for (const kind of GAP_KINDS) {
      const reading = newest(kind, arms);
      if (reading === undefined) continue;
      found[kind] = gapInSi(reading);
      used.push(reading);
    }
    return found;
  };
  const these = pick('these');
  const before = pick('before');
  const otherArm = here.filter((each) => isOther(each) && GAP_KINDS.some((kind) => kind === each.kind));
  return { these, before, otherArm, used };
}
