import type { BuildSpec } from '../../../shared/schemas/build-spec.ts';
import { siOf } from '../../../shared/schemas/entered.ts';
import { NOMINAL_RATIOS } from '../../../shared/schemas/method.ts';
import type { computation as ratioAtFullLift } from '../../mechanics/computations/ratio-at-full-lift.ts';
import type { Reading } from '../../records/readings/readings.ts';
import type { SetUp } from '../../records/set-ups/set-ups.ts';

export type RatioInput = Parameters<typeof ratioAtFullLift.compute>[0];

export const kindOf = (readings: readonly Reading[], kind: string) =>
  readings.filter((reading) => reading.kind === kind);

/** Nominals that the reading is set against: the common ones, and what the rockers are sold as. */
export function nominalsFor(spec: BuildSpec): number[] {
  const own = spec.rockers?.nominalRatio;
  const all = own === undefined ? [...NOMINAL_RATIOS] : [...new Set([...NOMINAL_RATIOS, own])];
  return all.sort((a, b) => a - b);
}

function lobeOf(spec: BuildSpec, setUp: SetUp) {
  return spec.cam?.[setUp.valve];
}

function lobeInput(
  spec: BuildSpec,
  setUp: SetUp,
  readings: readonly Reading[],
): RatioInput['lobeLift'] | string {
  const errorLimit = siOf(setUp.method.lobeErrorLimit);
  if (setUp.method.lobeSource === 'card') {
    const lobe = lobeOf(spec, setUp)?.lobeLift;
    if (lobe === undefined) return `the ${setUp.valve} lobe lift on the cam card`;
    return { value: siOf(lobe), errorLimit, source: 'card' };
  }
  const lifts = kindOf(readings, 'lobe-lift').map((reading) => siOf(reading.peak));
  if (lifts.length === 0) return 'a pass of the lobe lift';
  if (setUp.method.lobeSource === 'caliper') {
    return {
      value: lifts.reduce((sum, lift) => sum + lift, 0) / lifts.length,
      errorLimit,
      source: 'caliper',
    };
  }
  return { readings: lifts, graduation: siOf(setUp.method.graduation), errorLimit };
}

/** What `ratio-at-full-lift` is computed from, or the things that are still missing for it. */
export function ratioInput(
  spec: BuildSpec,
  setUp: SetUp,
  readings: readonly Reading[],
): { input: RatioInput; missing: [] } | { input: undefined; missing: string[] } {
  const { method } = setUp;
  const missing: string[] = [];
  if (method.spring === 'not-said') missing.push('which spring is on the valve');
  if (method.lifter === 'not-said') missing.push('which lifter is under the pushrod');
  if (method.lash === 'not-said') missing.push('whether the lash was taken up');
  const lobeLift = lobeInput(spec, setUp, readings);
  if (typeof lobeLift === 'string') missing.push(lobeLift);
  const valve = kindOf(readings, 'valve-lift').map((reading) => siOf(reading.peak));
  if (valve.length === 0) missing.push('a pass of the valve lift');
  if (missing.length > 0 || typeof lobeLift === 'string' || method.spring === 'not-said') {
    return { input: undefined, missing };
  }
  const input: RatioInput = {
    valveLift: { readings: valve, graduation: siOf(method.graduation), errorLimit: siOf(method.errorLimit) },
    lobeLift,
    sameIndicator: method.lobeSource === 'indicator',
    spring: method.spring,
    nominals: nominalsFor(spec),
  };
  return { input, missing: [] };
}
