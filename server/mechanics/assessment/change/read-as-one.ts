import { allowance } from '../../kit/allowances.ts';
import { medianKnown } from '../../valve-sheet/siblings.ts';
import { placeOf } from '../common/said.ts';
import { isOffSince } from '../common/seats.ts';
import type { ValveRatio } from '../common/valve-ratio.ts';
import type { Evidence, Side, ValvePlace } from '../evidence.ts';
import { markOn } from '../ratio/claims/stamp.ts';
import { lashInForce } from './known.ts';
import { stampedOn } from './stated-ratios.ts';

/** One valve is told by itself. */
const FEWEST = 2;

/** Valves of a side that the sheet read alike, told as one. */
export interface ReadAsOne {
  readonly places: readonly ValvePlace[];
  /** One for each spring that they were read on. */
  readonly ratios: readonly ValveRatio[];
}

/** One valve with the ratios that were read of it. */
interface OfValve {
  readonly place: ValvePlace;
  readonly ratios: readonly ValveRatio[];
}

/** What has to be the same of two valves for one figure to stand for both: everything but the lift itself. */
const likeKey = (evidence: Evidence, side: Side, { place, ratios }: OfValve): string =>
  JSON.stringify([
    lashInForce(evidence, side, place),
    stampedOn(evidence, place)?.value,
    ratios
      .map((each) => [
        each.spring,
        each.lashIn,
        each.soldAsThen,
        each.comesOff,
        isOffSince(each, evidence),
        markOn(evidence, each.armId),
        each.lacks.map(({ said }) => said),
      ])
      .toSorted(([a = ''], [b = '']) => (String(a) < String(b) ? -1 : 1)),
  ]);

const liftOf = ({ value, lobeLift }: ValveRatio): number => value * lobeLift;

const middle = (values: readonly number[]): number => medianKnown(values) ?? 0;

/** Those whose lifts lie with the middle of all of them, as the sheet takes a valve to be like its siblings. */
function lyingTogether(valves: readonly OfValve[], spring: ValveRatio['spring']): OfValve[] {
  const lifts = valves.map(({ ratios }) => {
    const own = ratios.find((each) => each.spring === spring);
    return own && liftOf(own);
  });
  const all = lifts.flatMap((lift) => lift ?? []);
  return valves.filter((_, at) => {
    const lift = lifts[at];
    return lift === undefined || Math.abs(lift - middle(all)) <= allowance('odd-beyond');
  });
}

/** The middle ratio over the middle lobe; its interval holds the lift that each of them may have. */
function asOne(ratios: readonly ValveRatio[]): ValveRatio[] {
  const highest = ratios.toSorted((a, b) => liftOf(b) - liftOf(a) || a.cylinder - b.cylinder)[0];
  if (highest === undefined) return [];
  const lobeLift = middle(ratios.map((each) => each.lobeLift));
  const over = (end: 'low' | 'high') => ratios.map((each) => (each[end] * each.lobeLift) / lobeLift);
  return [
    {
      ...highest,
      value: middle(ratios.map(({ value }) => value)),
      low: Math.min(...over('low')),
      high: Math.max(...over('high')),
      lobeLift,
      many: ratios.length,
      restsOn: [...new Set(ratios.flatMap(({ restsOn }) => restsOn))].sort(),
    },
  ];
}

/**
 * Of these valves of one side the most that the sheet read alike, on the same terms and with lifts that lie together:
 * one figure stands for all of them. The others are told each by itself.
 */
export function readAsOne(
  evidence: Evidence,
  side: Side,
  places: readonly ValvePlace[],
  ratios: readonly ValveRatio[],
): ReadAsOne | undefined {
  const like = new Map<string, OfValve[]>();
  for (const place of places) {
    const valve = { place, ratios: ratios.filter((each) => placeOf(each) === placeOf(place)) };
    const key = likeKey(evidence, side, valve);
    like.set(key, [...(like.get(key) ?? []), valve]);
  }
  const alike = [...like.values()].map((valves) => lyingTogether(lyingTogether(valves, 'light'), 'running'));
  const most = alike.toSorted((a, b) => b.length - a.length)[0] ?? [];
  if (most.length < FEWEST) return undefined;
  const own = most.flatMap((valve) => valve.ratios);
  return {
    places: most.map(({ place }) => place),
    ratios: (['light', 'running'] as const).flatMap((spring) =>
      asOne(own.filter((each) => each.spring === spring)),
    ),
  };
}
