import { defined } from '../../../shared/defined.ts';
import { UNITS } from '../../../shared/quantities/units.ts';
import { siIf, siOf } from '../../../shared/schemas/entered.ts';
import type { ScanEvidence, ScanPoint } from '../../mechanics/assessment/evidence.ts';
import type { GapScan, ScanReading } from '../../records/gap-scans/gap-scan-table.ts';
import { entryEvidence } from './entry.ts';

function pointOf({ crankAngle, gap: { value, low, high, unit, readAs } }: ScanReading): ScanPoint {
  const si = (length: number | undefined) => (length === undefined ? undefined : length * UNITS[unit].toSi);
  return {
    crankAngle: siOf(crankAngle),
    gap: defined({ value: si(value), low: si(low), high: si(high) }),
    readAs,
  };
}

/** A scan in SI; `entered` is the line of its first entry. */
export function scanEvidence(scan: GapScan, entered: number): ScanEvidence {
  const { cylinder, valve, readings, readAs, tool, spring, lifter, lash, lashSetting, arms, armId } = scan;
  return {
    ...entryEvidence(scan, entered),
    cylinder,
    valve,
    points: readings.map(pointOf),
    readAs,
    tool,
    spring,
    lifter,
    lash,
    arms,
    ...defined({ lashSetting: siIf(lashSetting), armId }),
  };
}
