import type { Reading } from '../../records/readings/readings.ts';
import type { SetUp } from '../../records/set-ups/set-ups.ts';

export interface LobeReadings {
  readonly readings: readonly Reading[];
  /** The earlier set-up they were taken in, where this one has none of its own. */
  readonly from: SetUp | undefined;
}

const ofLobe = (standing: readonly Reading[], setUpId: string) =>
  standing.filter((reading) => reading.setUpId === setUpId && reading.kind === 'lobe-lift');

/**
 * The passes of the lobe that a set-up uses: its own, or else those of the newest earlier set-up of the same
 * valve. Taken at the lifter's body they speak of the lobe alone, whatever spring or lash the valve had (common
 * practice, no published source).
 */
export function lobeReadings(
  setUp: SetUp,
  setUps: readonly SetUp[],
  standing: readonly Reading[],
): LobeReadings {
  const own = ofLobe(standing, setUp.id);
  if (own.length > 0 || setUp.method.lobeSource !== 'indicator') return { readings: own, from: undefined };
  const from = setUps.findLast(
    (each) =>
      each.number < setUp.number &&
      each.cylinder === setUp.cylinder &&
      each.valve === setUp.valve &&
      each.method.lobeSource === 'indicator' &&
      ofLobe(standing, each.id).length > 0,
  );
  return from === undefined
    ? { readings: own, from: undefined }
    : { readings: ofLobe(standing, from.id), from };
}
