import { turningCaution } from '../cam/caution.ts';
import { allowance } from '../kit/allowances.ts';
import { limitSource } from '../kit/limits.ts';
import { DEG } from '../kit/si.ts';
import { makerClearanceFirst, qualifiedShop, wouldMeet } from '../valve-clearance/words.ts';
import type { ScanLeast } from './least.ts';
import { FIT_WITHIN } from './smooth.ts';
import type { Station } from './stations.ts';

interface Given {
  readonly readingUncertainty?: number | undefined;
  readonly limit?: number | undefined;
  readonly side?: 'intake' | 'exhaust' | undefined;
}

/** Past this from top dead centre a least gap is asked about. */
const USUAL_WITHIN = allowance('least-gap-within');

/** A scan about top dead centre never reaches so far: an angle past it may be meant from the other side. */
const HALF_TURN = Math.PI;

function ofLimit({ limit, side }: Given): string[] {
  if (limit !== undefined) return [];
  if (side !== undefined) return [`default limit: ${limitSource(`piston-to-valve-${side}`)}`];
  return [
    `intake or exhaust not said: the wider of the two default limits, the exhaust’s; ${limitSource('piston-to-valve-exhaust')}`,
  ];
}

/** What a scan assumes, the inputs left out among it. */
export function scanAssumptions(given: Given, scan: ScanLeast): string[] {
  return [
    'crank angles are exact and count from true top dead centre: 350° is not taken as 10° before it',
    ...(scan.edge === 'none'
      ? [
          scan.fitted.length > 3
            ? `within ${FIT_WITHIN / DEG}° of the least the gap is a parabola, by least squares through ${scan.fitted.length} readings`
            : 'between the least reading and its two neighbours the gap is a parabola',
        ]
      : ['nothing is fitted at an end of the scan: the least reading stands for the least gap']),
    'gaps read on a solid lifter and a light spring: a sinking lifter makes them large',
    ...(given.readingUncertainty === undefined
      ? ['readings taken as exact: no interval']
      : ['the readings err independently of each other, all by as much']),
    ...ofLimit(given),
  ];
}

/** The readings of the fit rise by less than two readings can differ: which is least is left to chance. */
function lostInScatter(scan: ScanLeast, readingUncertainty = 0): boolean {
  if (scan.edge !== 'none') return false;
  const ends = [scan.fitted[0], scan.fitted.at(-1)].map(
    (end) => (end?.crankAngle ?? scan.crankAngle) - scan.crankAngle,
  );
  const rise =
    scan.fitted.length > 3
      ? scan.bend * Math.max(...ends.map((way) => way * way))
      : Math.max(scan.before.gap, scan.after.gap) - scan.reading.gap;
  return rise < readingUncertainty * Math.SQRT2;
}

/** What a scan must warn of. */
export function scanCautions(
  given: Given,
  scan: ScanLeast,
  stations: readonly Station[],
  result: { readonly limit: number; readonly verdict?: string | undefined },
): string[] {
  const twice = stations.some(({ gap, highest }) => highest > gap);
  const outside = stations.some(({ crankAngle }) => Math.abs(crankAngle) > HALF_TURN);
  return [
    turningCaution,
    ...(scan.least <= 0 ? [wouldMeet] : []),
    ...(scan.edge === 'none'
      ? []
      : ['The least gap is at an end of the readings, so it is not judged: further on it may be less.']),
    ...(scan.edge !== 'none' && scan.least < result.limit
      ? ['What was read there is under the limit already.']
      : []),
    ...(twice
      ? [
          'One crank angle was read more than once with different gaps: the least of them is used. Find out why.',
        ]
      : []),
    ...(lostInScatter(scan, given.readingUncertainty)
      ? [
          'Beside the least gap the readings rise by less than they can be off: the least found is rather too small. Wider steps or the mean of several passes tell more.',
        ]
      : []),
    ...(outside
      ? [
          'Some crank angles are more than 180° from TDC: angles before TDC are negative, 350° is not 10° before it.',
        ]
      : []),
    ...(Math.abs(scan.crankAngle) > USUAL_WITHIN
      ? [
          'A least gap is mostly found within 25° of TDC (common practice): check the wheel’s zero and the valve.',
        ]
      : []),
    ...(result.verdict === 'clear' || result.verdict === undefined ? [] : [qualifiedShop]),
    makerClearanceFirst,
  ];
}
