import { within } from './compare.ts';
import { idsOf, lobeInUse, valveLift } from './lifts.ts';
import type { Tolerances } from './tolerances.ts';
import type { Question, QuestionInput } from './types.ts';
import { inch } from './words.ts';

/** A lift read part of the way up is good to about this, inches: common practice, no published source. */
const STATION_FITS = 0.006;

/** Part of the way up the valve moves what it should: no lash is in the lift. */
export function stationsAreFull({ stations = [], nominalRatio }: QuestionInput): boolean {
  if (stations.length === 0 || nominalRatio === undefined) return false;
  const off = stations.map(({ atLobeLift, lift }) => lift - atLobeLift * nominalRatio);
  return within(off.reduce((sum, each) => sum + each, 0) / off.length, STATION_FITS);
}

/** Row 7, "drops with lift": full part of the way up, and short at the top. */
export function shortAtTop(input: QuestionInput, tolerances: Tolerances): Question[] {
  const [lift, lobe] = [valveLift(input), lobeInUse(input)];
  const { nominalRatio, stations = [] } = input;
  if (lift === undefined || lobe === undefined || nominalRatio === undefined || input.lash === 'set')
    return [];
  const short = lobe * nominalRatio - lift;
  const reads = stations.map(({ atLobeLift }) => atLobeLift);
  if (short < tolerances.sinkShort - 1e-9 || !stationsAreFull(input)) return [];
  return [
    {
      code: 'short-at-top',
      weight: 'strong',
      ask: `It is right up to ${inch(Math.max(...reads))} of lobe lift and ${inch(short)} short at the top. Did the indicator run out of travel?`,
      knownBy: 'right up to part of the lift and short at the top',
      size: 'Lash would be missing all the way up, so it is not the lash. A lifter that sinks reads so too.',
      test: 'See that the tip has room left at full lift and that nothing touches; then read again on a solid lifter.',
      restsOn: [...idsOf(input.valvePasses)],
    },
  ];
}
