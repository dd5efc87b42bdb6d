import type { BuildSpec } from '../../../shared/schemas/build-spec.ts';
import { inches } from '../../../shared/schemas/entered.ts';
import type { Pass, QuestionInput } from '../../mechanics/questions/types.ts';
import type { Reading } from '../../records/readings/readings.ts';
import type { SetUp } from '../../records/set-ups/set-ups.ts';
import { lobeReadings } from './lobe-readings.ts';

const mean = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / values.length;

function passesOf(readings: readonly Reading[], kind: string): Pass[] {
  return readings
    .filter((reading) => reading.kind === kind)
    .map((reading) => ({
      id: reading.id,
      lift: inches(reading.peak),
      ...(reading.zeroReturn === undefined ? {} : { zeroReturn: inches(reading.zeroReturn) }),
    }));
}

function last<T>(items: readonly T[]): T | undefined {
  return items.at(-1);
}

/** Mean valve lift over mean lobe lift of another set-up of the same valve, on the stated spring. */
function otherRatio(setUp: SetUp, setUps: readonly SetUp[], readings: readonly Reading[], spring: string) {
  const other = last(
    setUps.filter(
      (each) =>
        each.cylinder === setUp.cylinder && each.valve === setUp.valve && each.method.spring === spring,
    ),
  );
  if (other === undefined) return undefined;
  const own = readings.filter((reading) => reading.setUpId === other.id);
  const valve = passesOf(own, 'valve-lift').map((pass) => pass.lift);
  const lobe = passesOf(lobeReadings(other, setUps, readings).readings, 'lobe-lift').map((pass) => pass.lift);
  if (valve.length === 0 || lobe.length === 0) return undefined;
  return { ratio: mean(valve) / mean(lobe), lash: other.method.lash };
}

/** One peak for each other valve: several passes of one valve are alike because they are of one valve. */
function peaksByValve(
  readings: readonly Reading[],
  valveOf: (reading: Reading) => string,
): number[] | undefined {
  const byValve = new Map<string, number[]>();
  for (const reading of readings) {
    const peaks = byValve.get(valveOf(reading)) ?? [];
    peaks.push(inches(reading.peak));
    byValve.set(valveOf(reading), peaks);
  }
  return byValve.size === 0 ? undefined : [...byValve.values()].map(mean);
}

/** What the questions are asked from, out of the stored readings that stand. */
export function questionInput(
  spec: BuildSpec,
  setUp: SetUp,
  setUps: readonly SetUp[],
  standing: readonly Reading[],
): QuestionInput {
  const { method } = setUp;
  const own = standing.filter((reading) => reading.setUpId === setUp.id);
  const valveOf = (reading: Reading) => {
    const at = setUps.find((each) => each.id === reading.setUpId);
    return at === undefined ? '' : `${at.cylinder} ${at.valve}`;
  };
  const elsewhere = standing.filter(
    (reading) => reading.kind === 'valve-lift' && valveOf(reading) !== `${setUp.cylinder} ${setUp.valve}`,
  );
  const lobe = spec.cam?.[setUp.valve];
  const otherLobe = spec.cam?.[setUp.valve === 'intake' ? 'exhaust' : 'intake'];
  const light = otherRatio(setUp, setUps, standing, 'light');
  const running = otherRatio(setUp, setUps, standing, 'running');
  const stated = (kind: string) => last(own.filter((reading) => reading.kind === kind));
  const inch = (entry: Parameters<typeof inches>[0] | undefined) =>
    entry === undefined ? undefined : inches(entry);
  return {
    valvePasses: passesOf(own, 'valve-lift'),
    lobePasses: passesOf(lobeReadings(setUp, setUps, standing).readings, 'lobe-lift'),
    spring: method.spring,
    lifter: method.lifter,
    lash: method.lash,
    restsOn: method.restsOn,
    alignment: method.alignment,
    perTurn: inches(method.perTurn),
    graduation: inches(method.graduation),
    lobeSource: method.lobeSource,
    statedValveLift: inch(stated('stated-valve-lift')?.peak),
    statedLobeLift: inch(stated('stated-lobe-lift')?.peak),
    lashSetting: inch(method.lashSetting),
    travel: inch(method.travel),
    pushedIn: inch(method.pushedIn),
    cardLobeLift: inch(lobe?.lobeLift),
    otherCardLobeLift: inch(otherLobe?.lobeLift),
    cardValveLift: inch(lobe?.cardValveLift),
    cardLash: inch(lobe?.lash),
    cardRatio: spec.cam?.assumedRatio,
    nominalRatio: spec.rockers?.nominalRatio,
    lightRatio: light?.ratio,
    runningRatio: running?.ratio,
    lightLash: light?.lash,
    runningLash: running?.lash,
    otherPeaks: peaksByValve(elsewhere, valveOf),
  };
}
