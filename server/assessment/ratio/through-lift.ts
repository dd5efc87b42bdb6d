import { z } from 'zod';
import { InputFaults } from '../../../shared/problems/faults.ts';
import { answer } from '../../../shared/schemas/answer.ts';
import { siOf } from '../../../shared/schemas/entered.ts';
import { encoded } from '../../compute/encode.ts';
import { computation as ratioThroughLift } from '../../mechanics/computations/ratio-through-lift.ts';
import { IN } from '../../mechanics/kit/si.ts';
import { stillStanding } from '../../records/corrections/entries.ts';
import type { Reading } from '../../records/readings/readings.ts';
import type { SetUp } from '../../records/set-ups/set-ups.ts';
import type { BuildRecord } from '../../records/whole-build/build-record.ts';
import { setUpRatio } from './ratio.ts';

type Input = Parameters<typeof ratioThroughLift.compute>[0];
type Result = ReturnType<typeof ratioThroughLift.compute>;
type Pair = Input['pairs'][number];

/** The ratio through the lift of a set-up's valve, or what it still lacks. */
export interface ThroughLift {
  readonly input: Input | undefined;
  readonly result: Result | undefined;
  readonly missing: readonly string[];
}

/** Standard uncertainty of one lift at a station: common practice, no published source. */
const READING_UNCERTAINTY = 0.0015 * IN;
const FEWEST = 3;

const mean = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / values.length;

/** Stations in rising order, several readings at one lobe lift as their mean; full lift is the last of them. */
function stationsOf(readings: readonly Reading[], lobes: readonly Reading[]): Pair[] {
  const at = new Map<number, number[]>();
  for (const { atLobeLift, peak } of readings) {
    if (atLobeLift === undefined) continue;
    const lobe = siOf(atLobeLift);
    at.set(lobe, [...(at.get(lobe) ?? []), siOf(peak)]);
  }
  const full = readings.filter(({ kind }) => kind === 'valve-lift').map(({ peak }) => siOf(peak));
  if (full.length > 0 && lobes.length > 0) at.set(mean(lobes.map(({ peak }) => siOf(peak))), full);
  return [...at]
    .map(([lobeLift, lifts]) => ({ lobeLift, valveLift: mean(lifts) }))
    .sort((a, b) => a.lobeLift - b.lobeLift);
}

const sameValve = (a: SetUp, b: SetUp) => a.cylinder === b.cylinder && a.valve === b.valve;

function computed(input: Input): ThroughLift {
  try {
    return { input, result: ratioThroughLift.compute(input), missing: [] };
  } catch (error) {
    if (!(error instanceof InputFaults)) throw error;
    const missing = error.faults.map(
      ({ pointer, detail }) => `${pointer.slice(1).replaceAll('/', ' ')} ${detail}`,
    );
    return { input, result: undefined, missing };
  }
}

/**
 * Lifts read part of the way up tell the ratio, the lash left in and, with both springs, the give of the train apart.
 * The newest set-ups of the valve of the one asked about are used, on either spring.
 */
export function throughLift(record: BuildRecord, setUpId: string): ThroughLift {
  const found = setUpRatio(record, setUpId);
  const standing = stillStanding(record.readings);
  const on = (spring: string): Pair[] => {
    const newest = record.setUps.findLast(
      (each) => sameValve(each, found.setUp) && each.method.spring === spring,
    );
    return newest === undefined
      ? []
      : stationsOf(
          standing.filter(({ setUpId }) => setUpId === newest.id),
          found.lobe.readings,
        );
  };
  const [light, running] = [on('light'), on('running')];
  if (light.length < FEWEST) {
    const text = `three lobe lifts on the light spring, full lift among them: ${light.length} of ${FEWEST}`;
    return { input: undefined, result: undefined, missing: [text] };
  }
  const { seatLoad, rate } = found.spec.springs ?? {};
  const both = running.length >= FEWEST && seatLoad !== undefined && rate !== undefined;
  return computed({
    pairs: light,
    readingUncertainty: READING_UNCERTAINTY,
    ...(both
      ? { secondPass: { pairs: running, springSeatLoad: siOf(seatLoad), springRate: siOf(rate) } }
      : {}),
  });
}

export const throughLiftView = z
  .object({ result: ratioThroughLift.output.optional(), missing: z.array(z.string()) })
  .meta({ id: 'ThroughLift' });

export const showThroughLift = ({ result, missing }: ThroughLift) =>
  answer(throughLiftView, {
    result: result === undefined ? undefined : encoded(ratioThroughLift.output, result, 'inch'),
    missing,
  });
