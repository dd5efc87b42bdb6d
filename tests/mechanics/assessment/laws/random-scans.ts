import type { Bounds, ScanEvidence, ScanPoint } from '../../../../server/mechanics/assessment/evidence.ts';
import { DEG, IN } from '../../../../server/mechanics/kit/si.ts';
import type { Chance } from '../../explain-readings/random.ts';
import { known, maybe, type TrueEngine, thou } from './random-engine.ts';

/** A gap as it was read: a figure, now and then the gauge that goes, or the two it lies between. */
function gapOf(chance: Chance, inches: number): Bounds {
  if (chance.happens(0.9)) return { value: thou(inches) };
  const low = thou(Math.max(0.001, inches - 0.006));
  return chance.happens(0.5) ? { low } : { low, high: low + 0.01 * IN };
}

function pointsOf(chance: Chance, valve: 'intake' | 'exhaust'): ScanPoint[] {
  const step = chance.pick([1, 2, 2, 2, 5, 8]);
  const least = chance.between(0.02, 0.18);
  const where = chance.between(5, 14) * (valve === 'intake' ? 1 : -1);
  const bend = chance.between(0.0001, 0.0004);
  const sign = chance.happens(0.1) ? -1 : 1;
  // Now and then a scan that stops short of its least.
  const from = where - (chance.happens(0.2) ? -2 : chance.pick([6, 8, 12]));
  const count = chance.pick([1, 2, 5, 8, 12]);
  return Array.from({ length: count }, (_, index) => {
    const angle = from + index * step;
    const inches = least + bend * (angle - where) ** 2 + chance.normal(0.0008);
    return {
      crankAngle: Math.round(angle) * sign * DEG,
      gap: chance.happens(0.01) ? { value: -thou(0.005) } : gapOf(chance, inches),
      readAs: `${inches.toFixed(3)} in`,
    };
  });
}

/** Scans of piston to valve over the crank, with what goes wrong in them. */
export function scansOf(chance: Chance, { careful }: TrueEngine): ScanEvidence[] {
  const count = chance.pick([0, 0, 1, 1, 2, 3]);
  return Array.from({ length: count }, (_, index) => {
    const valve = chance.pick(['intake', 'exhaust'] as const);
    const lash = careful ? 'zero' : chance.pick(['zero', 'set', 'not-said'] as const);
    return {
      id: `scan-${index + 1}`,
      line: 0,
      standing: !chance.happens(0.1),
      cylinder: chance.pick([1, 1, 2]),
      valve,
      points: pointsOf(chance, valve),
      readAs: 'gaps over the crank',
      tool: chance.pick(['indicator', 'clay', 'wire', 'not-said']),
      spring: careful ? 'light' : chance.pick(['light', 'running', 'not-said'] as const),
      lifter: careful ? 'solid' : chance.pick(['solid', 'locked', 'hydraulic', 'not-said'] as const),
      lash,
      arms: chance.happens(0.7) ? 'these' : 'before',
      ...known<ScanEvidence>({
        lashSetting: lash === 'set' ? maybe(chance, 0.7, () => thou(chance.between(0.01, 0.026))) : undefined,
      }),
    };
  });
}
