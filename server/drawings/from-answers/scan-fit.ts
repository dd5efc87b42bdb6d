import type { ScanLeast } from '../../mechanics/gap-scan/least.ts';

const IN = 0.0254;
const DEG = Math.PI / 180;

/** The parabola of a scan as its drawing takes it, in degrees and inches; none at an edge. */
export function fitDrawn(scan: ScanLeast): { from: number; to: number; bend: number } | undefined {
  const [first, last] = scan.edge === 'none' ? [scan.fitted[0], scan.fitted.at(-1)] : [];
  if (scan.edge !== 'none' || first === undefined || last === undefined) return undefined;
  return { from: first.crankAngle / DEG, to: last.crankAngle / DEG, bend: (scan.bend * DEG * DEG) / IN };
}
