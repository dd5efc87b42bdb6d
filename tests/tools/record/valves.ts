import type { Evidence, ScanEvidence } from '../../../server/mechanics/assessment/evidence.ts';
import type { GapScan } from '../../../server/records/gap-scans/gap-scan-table.ts';
import type { SheetReading } from '../../../server/records/sheet/sheet-table.ts';
import type { BuildRecord } from '../../../server/records/whole-build/build-record.ts';
import { TOOLS } from '../../../shared/schemas/sheet.ts';
import { keysOf } from '../../../shared/schemas/words.ts';
import { entry, gauged, ifKnown, inches, typed } from './stored.ts';

export const sheetReadings = ({ sheet }: Evidence): SheetReading[] =>
  sheet.map(({ cylinder, valve, kind, reading, readAs, tool, spring, lifter, arms, armId, ...rest }) => ({
    ...entry(rest),
    cylinder,
    valve,
    kind,
    reading: gauged(reading, readAs),
    tool: keysOf(TOOLS).find((each) => each === tool) ?? 'not-said',
    spring,
    lifter,
    arms,
    armId,
  }));

export const lashLines = ({ lash }: Evidence): BuildRecord['lashLines'] =>
  lash.map(
    ({
      cylinder,
      valve,
      gap,
      readAs,
      moment,
      engine,
      nut,
      day,
      shim,
      entered,
      toldLater = false,
      ...rest
    }) => ({
      reading: {
        ...entry(rest),
        cylinder,
        valve,
        kind: 'lash' as const,
        reading: gauged(gap, readAs),
        tool: 'feeler' as const,
        spring: 'not-said' as const,
        lifter: 'not-said' as const,
        arms: 'these' as const,
        armId: undefined,
      },
      engine,
      moment,
      nut,
      on: day,
      entered: entered ?? rest.line,
      toldLater,
      doneBy: 'Robin',
      shim: ifKnown(shim, 'mm'),
    }),
  );

export const tipMarks = (evidence: Evidence): BuildRecord['tipMarks'] =>
  evidence.tipMarks.map(
    ({ width, off, pushrod, pushrodOver, shims, stem, cylinder, valve, side, readAs, ...rest }) => ({
      ...entry(rest),
      cylinder,
      valve,
      side,
      readAs,
      width: inches(width),
      off: ifKnown(off),
      pushrod: ifKnown(pushrod),
      pushrodOver: pushrodOver ?? ('not-said' as const),
      shims: ifKnown(shims),
      stem: ifKnown(stem),
      spring: rest.spring ?? ('not-said' as const),
      found: rest.found ?? ('not-said' as const),
      armId: rest.armId,
    }),
  );

function scanOf(scan: ScanEvidence): GapScan {
  const { cylinder, valve, readAs, spring, lifter, lash, lashSetting, arms, armId } = scan;
  return {
    ...entry(scan),
    cylinder,
    valve,
    readings: scan.points.map(({ crankAngle, gap, readAs: read }) => ({
      crankAngle: typed(crankAngle, 'deg'),
      gap: gauged(gap, read),
    })),
    readAs,
    tool: keysOf(TOOLS).find((each) => each === scan.tool) ?? 'not-said',
    spring,
    lifter,
    lash,
    lashSetting: ifKnown(lashSetting),
    arms,
    armId,
  };
}

export const gapScans = (evidence: Evidence): BuildRecord['gapScans'] => (evidence.scans ?? []).map(scanOf);
