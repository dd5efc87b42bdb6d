import type { Station } from '../../../server/mechanics/gap-scan/stations.ts';
import { DEG } from '../../../server/mechanics/kit/si.ts';

/** Gaps in any unit at crank angles in degrees, as a scan puts them in order. */
export const stationsAt = (points: readonly (readonly [degree: number, gap: number])[]): Station[] =>
  points.map(([degree, gap], index) => ({ crankAngle: degree * DEG, gap, highest: gap, index }));
