import type { Evidence, ScanEvidence } from '../../../server/mechanics/assessment/evidence.ts';
import { DEG, IN } from '../../../server/mechanics/kit/si.ts';
import { PLAIN } from '../../mechanics/assessment/plain-build.ts';

/* Gap curves of an invented engine: least + .0004 × (angle − 9)² in, about 9° after top dead centre. */

type Pair = readonly [angle: number, gap: number];

export const curve = (least: number, from = 0, to = 20, step = 2): Pair[] =>
  Array.from({ length: (to - from) / step + 1 }, (_, index) => from + step * index).map((angle) => [
    angle,
    Number((least + 0.0004 * (angle - 9) ** 2).toFixed(4)),
  ]);

let line = 0;
export function scan(pairs: readonly Pair[], more: Partial<ScanEvidence> = {}): ScanEvidence {
  line += 1;
  return {
    id: `scan-${line}`,
    line,
    standing: true,
    cylinder: 1,
    valve: 'intake',
    points: pairs.map(([angle, gap]) => ({
      crankAngle: angle * DEG,
      gap: { value: gap * IN },
      readAs: `${gap} in`,
    })),
    readAs: 'a scan',
    tool: 'indicator',
    spring: 'light',
    lifter: 'solid',
    lash: 'zero',
    arms: 'these',
    ...more,
  };
}

export const scanned = (scans: readonly ScanEvidence[], more: Partial<Evidence> = {}): Evidence => ({
  ...PLAIN,
  call: { ...PLAIN.call, goal: 'clearances-after-a-change' },
  card: { assumedRatio: 1.5, intake: { lobeLift: 0.34 * IN }, exhaust: {} },
  springs: {},
  rockers: {},
  scans,
  ...more,
});
