import { formatRatioInterval } from '../../../../../shared/quantities/format.ts';
import { usualDeflection } from '../../../kit/allowances.ts';
import { inDoubt } from '../../common/asked.ts';
import { inches, nominalSaid, ratioSaid, upperFirst } from '../../common/said.ts';
import { claimSaid } from '../claims/marks.ts';
import { type Band, bandsOf, WITHIN } from '../compared/bands.ts';
import type { GroupExplained } from '../compared/explain.ts';
import type { SetUpKnown } from '../compared/known.ts';
import { restingOn, runningAlone } from '../compared/lacking.ts';
import type { RatioRead } from '../compared/reading.ts';
import { isLashKnownIn } from '../read/lack.ts';
import type { StampAsked } from './stamp-doubt.ts';

/** So near to a name a reading may be told by it; two thousandths of a lift on a usual lobe. */
const NAMED_WITHIN = 0.004;
export const spans = (bands: readonly Band[], ...both: readonly Band[]): boolean =>
  bands.length === both.length && both.every((band) => bands.includes(band));

/** `, and level with the 1.65 it is sold as` */
export function alsoLevel({ claims: [, other] }: GroupExplained, { low, high }: RatioRead): string {
  if (other === undefined || !spans(bandsOf(other.ratio, low, high), 'within')) return '';
  return `, and level with ${claimSaid(other, nominalSaid(other.ratio))}`;
}

/** A reading that is far off says what it would be by itself. */
export function readsAs(explained: GroupExplained, { value, low, high }: RatioRead): string {
  const name = (explained.result?.nominals ?? [])
    .map(({ ratio }) => ratio)
    .filter((ratio) => ratio >= low && ratio <= high && Math.abs(value / ratio - 1) <= NAMED_WITHIN)
    .toSorted((a, b) => Math.abs(a - value) - Math.abs(b - value))[0];
  // What is asked about it would make it another.
  if (name === undefined || explained.questions.some(inDoubt)) return '';
  const stations = (restingOn(explained)?.read.standing ?? []).filter(
    ({ atLobeLift }) => atLobeLift !== undefined,
  );
  const so = stations.every(
    ({ value: lift, atLobeLift = 1 }) => Math.abs(lift / atLobeLift / name - 1) <= WITHIN,
  );
  const part = stations.length > 0 && so ? ', part of the way up too' : '';
  return ` By itself it reads as a ${nominalSaid(name)}${part}.`;
}

/** What a running spring takes at the most, whatever the mounting. */
const MOST_FLEX = usualDeflection(undefined).to;

/** How far a running reading is short of what the arm is held to be, where no spring takes as much. */
function shortOf(
  { claims: [claim] }: GroupExplained,
  { read: { lift, lobe } }: SetUpKnown,
): string | undefined {
  if (claim === undefined || lift === undefined || lobe.value === undefined) return undefined;
  const short = claim.ratio * lobe.value * (1 - WITHIN) - lift.read;
  return short <= MOST_FLEX
    ? undefined
    : `${inches(claim.ratio * lobe.value - lift.read)} short of what ${claimSaid(claim, nominalSaid(claim.ratio))} makes: no spring takes as much`;
}

/**
 * A running-spring ratio is told as that, in one breath with what it is not set against yet; how far under a mark it
 * lies is not said, unless no spring explains it. Without one the `waits` stands by itself.
 */
export function runningSaid(explained: GroupExplained, waits: string): string {
  const running = runningAlone(explained);
  if (running?.result === undefined) return upperFirst(`${waits}.`);
  const { ratio, interval95 } = running.result;
  const [low, high] = interval95;
  const read = `${formatRatioInterval(ratio, (high - low) / 2)} on the running spring`;
  const short = shortOf(explained, running);
  return short === undefined ? `${read}, ${waits}.` : `${read}, ${short}. ${upperFirst(waits)}.`;
}

/** A mark without its point that may be the ratio: it stays open beside what the arm is sold as. */
export const undottedSaid = (stamp: StampAsked | undefined): string =>
  stamp?.undotted === undefined
    ? ''
    : ` Is the “${stamp.undotted.text}” on it a ${nominalSaid(stamp.undotted.ratio)}?`;

/** Lash that was left in by a known amount: what it comes to with that put back, which no word stands on. */
export function putBackSaid(explained: GroupExplained): string {
  const resting = restingOn(explained);
  const setting = resting?.read.setUp.lashSetting;
  if (resting?.result === undefined || setting === undefined) return '';
  if (!resting.lacks.every(isLashKnownIn) || resting.lacks.length === 0) return '';
  return ` With the ${inches(setting)} put back it comes to ${ratioSaid(resting.result.ratio)}.`;
}
