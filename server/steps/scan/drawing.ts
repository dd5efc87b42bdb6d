import { spokenUnits } from '../../../shared/quantities/spoken-units.ts';
import { fromSi } from '../../../shared/quantities/units.ts';
import { type Drawing, rulerOf } from '../../drawings/drawing.ts';
import { gapScan } from '../../drawings/gap-scan.ts';
import type { ScanDetail } from '../../mechanics/assessment/scans/detail.ts';

const IN = 0.0254;
const degrees = (si: number): number => fromSi(si, 'deg').value;
const inches = (si: number): number => fromSi(si, 'in').value;

/** A scan as a curve over the crank, its least and the limit marked; none where only gauges were read. */
export function scanDrawings(scan: ScanDetail): Drawing[] {
  const { stations, curve, crankAngle, least, limit } = scan;
  if (crankAngle === undefined || stations.length === 0) return [];
  const value = least.value ?? Math.min(...stations.map(({ gap }) => gap));
  const drawing = gapScan(
    {
      readings: stations.map(({ crankAngle: at, gap }) => [degrees(at), inches(gap)] as const),
      least: inches(value),
      atCrankAngle: degrees(crankAngle),
      limit: inches(limit.value),
      ...(curve === undefined
        ? {}
        : {
            fit: {
              from: degrees(curve.from),
              to: degrees(curve.to),
              bend: (curve.bend * (Math.PI / 180) ** 2) / IN,
            },
          }),
    },
    { id: `scan-${scan.scanId}`, ruler: rulerOf(spokenUnits()) },
  );
  return [
    {
      ...drawing,
      title: `Piston to valve over the crank, ${scan.cylinder} ${scan.valve}, line ${scan.line}`,
    },
  ];
}
