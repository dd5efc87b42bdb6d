import { InputFaults } from '../../../../../shared/problems/faults.ts';
import { computation as ratioThroughLift } from '../../../computations/ratio-through-lift.ts';
import { IN } from '../../../kit/si.ts';
import { placeOf } from '../../common/said.ts';
import type { Evidence, Spring } from '../../evidence.ts';
import type { ThroughLiftDetail, ThroughLiftInput } from './detail.ts';
import { faultsSaid } from './full-lift.ts';
import type { SetUpRead } from './set-up-read.ts';

type Pair = ThroughLiftInput['pairs'][number];

/** Standard uncertainty of one lift at a station: common practice, no published source. */
const READING_UNCERTAINTY = 0.0015 * IN;
const FEWEST = 3;

const mean = (values: readonly number[]): number =>
  values.reduce((sum, value) => sum + value, 0) / values.length;

/** Stations in rising order, several readings at one lobe lift as their mean; full lift is the last of them. */
function stationsOf({ standing, lift, lobe }: SetUpRead): Pair[] {
  const at = new Map<number, number[]>();
  for (const { kind, atLobeLift, value } of standing) {
    if (kind !== 'valve-lift-at' || atLobeLift === undefined) continue;
    at.set(atLobeLift, [...(at.get(atLobeLift) ?? []), value]);
  }
  if (lift !== undefined && lobe.value !== undefined) at.set(lobe.value, [lift.read]);
  return [...at]
    .map(([lobeLift, lifts]) => ({ lobeLift, valveLift: mean(lifts) }))
    .sort((a, b) => a.lobeLift - b.lobeLift);
}

function computed(input: ThroughLiftInput): ThroughLiftDetail {
  try {
    return { input, result: ratioThroughLift.compute(input), lacks: [] };
  } catch (error) {
    if (!(error instanceof InputFaults)) throw error;
    return { input, lacks: faultsSaid(error) };
  }
}

/**
 * Lifts read part of the way up tell the ratio, the lash left in and, with both springs, the give of the train apart.
 * The newest set-ups of the valve with this arm, on either spring, are used.
 */
export function throughLift(
  evidence: Evidence,
  own: SetUpRead,
  all: readonly SetUpRead[],
): ThroughLiftDetail {
  const alike = all.filter(
    ({ setUp }) => placeOf(setUp) === placeOf(own.setUp) && setUp.armId === own.setUp.armId,
  );
  const on = (spring: Spring): Pair[] => {
    const found = alike.map((each) => ({ each, pairs: stationsOf(each) })).toReversed();
    const newest = found.find(({ each, pairs }) => each.setUp.spring === spring && pairs.length >= FEWEST);
    return (newest ?? found.find(({ each }) => each.setUp.spring === spring))?.pairs ?? [];
  };
  const [light, running] = [on('light'), on('running')];
  if (light.length < FEWEST)
    return {
      lacks: [`three lobe lifts on the light spring, full lift among them: ${light.length} of ${FEWEST}`],
    };
  const { seatLoad, rate } = evidence.springs;
  const both = running.length >= FEWEST && seatLoad !== undefined && rate !== undefined;
  return computed({
    pairs: light,
    readingUncertainty: READING_UNCERTAINTY,
    ...(both ? { secondPass: { pairs: running, springSeatLoad: seatLoad, springRate: rate } } : {}),
  });
}
