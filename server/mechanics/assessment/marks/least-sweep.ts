import { isHydraulicLifter } from '../../../../shared/lifters.ts';
import { InputFaults } from '../../../../shared/problems/faults.ts';
import { sideOfValve } from '../../../../shared/schemas/words.ts';
import { computation as rollerSweep } from '../../computations/roller-sweep.ts';
import { allowance } from '../../kit/allowances.ts';
import { IN } from '../../kit/si.ts';
import { medianOf } from '../../statistics/median.ts';
import { lashInForce } from '../change/known.ts';
import { beforeAndAfter } from '../change/ratios.ts';
import { forSide, plansOf } from '../common/plans.ts';
import { byPlace, inches, placeOf, ratioSaid } from '../common/said.ts';
import type { ValveRatio } from '../common/valve-ratio.ts';
import type { Evidence, Side, ValvePlace } from '../evidence.ts';
import type { LeastSweepDetail } from './detail.ts';

/** No length on an engine is known nearer than half a thousandth, however it was calculated. */
const FINEST = 0.0005 * IN;

interface Known {
  readonly value: number;
  readonly low: number;
  readonly high: number;
  readonly said: string;
  readonly restsOn: readonly string[];
}

/** The kept computation that was entered last, by its line on the record. */
const keptOf = ({ workings }: Evidence) =>
  workings
    .filter(({ computation }) => computation === rollerSweep.name)
    .toSorted((a, b) => a.line - b.line)
    .at(-1);

function within(value: number, half: number, said: string, restsOn: readonly string[] = []): Known {
  return { value, low: value - half, high: value + half, said, restsOn };
}

/** The arm as the build has it, as the part in the hand was read, or as a computation was kept with it. */
function armOf(evidence: Evidence): Known | undefined {
  const half = allowance('arm-length');
  const told = evidence.rockers.pivotToTip;
  if (told !== undefined) return within(told, half, `pivot to tip ${inches(told)}, from the build`);
  const read = evidence.part.filter(({ kind, standing }) => kind === 'pivot-to-tip' && standing);
  const sizes = read.flatMap(({ size }) => size ?? []);
  if (sizes.length > 0) {
    const middle = medianOf(sizes);
    return within(
      middle,
      half,
      `pivot to tip ${inches(middle)}, read of the part`,
      read.map(({ id }) => id).sort(),
    );
  }
  const kept = keptOf(evidence);
  return kept?.pivotToTip === undefined
    ? undefined
    : within(kept.pivotToTip, half, `pivot to tip ${inches(kept.pivotToTip)}, line ${kept.line}`);
}

/** A valve, or any of one side. */
type SweepOf = Pick<ValvePlace, 'valve'> & Partial<ValvePlace>;

const placeIn = ({ cylinder, valve }: SweepOf): ValvePlace | undefined =>
  cylinder === undefined ? undefined : { cylinder, valve };

/**
 * Ratios that speak of a side: those of its set-ups, else the one of the sheet that lifts most, on the lightest spring that
 * it was read on.
 */
function ofSide(ratios: readonly ValveRatio[], side: Side): readonly ValveRatio[] {
  const here = ratios.filter(({ valve }) => sideOfValve(valve) === side);
  const ofSetUps = here.filter(({ ofSheet }) => ofSheet !== true);
  if (ofSetUps.length > 0) return ofSetUps;
  const light = here.filter(({ spring }) => spring === 'light');
  return (light.length > 0 ? light : here).toSorted((a, b) => b.value - a.value || byPlace(a, b)).slice(0, 1);
}

/** Net lift of the arms that are on: as measured there, or as they are sold; the lash is taken off once. */
function liftOf(evidence: Evidence, of: SweepOf, ratios: readonly ValveRatio[]): Known | undefined {
  const place = placeIn(of);
  const own = ratios.filter((ratio) => place !== undefined && placeOf(ratio) === placeOf(place));
  const used = own.length > 0 ? own : ofSide(ratios, sideOfValve(of.valve));
  const seen = forSide(evidence, sideOfValve(of.valve));
  const { after } = beforeAndAfter(seen, sideOfValve(of.valve), used, plansOf(seen)[0]);
  const lobe =
    used.find(({ value }) => value === after?.value)?.lobeLift ??
    evidence.card[sideOfValve(of.valve)].lobeLift;
  const kept = keptOf(evidence)?.netLift;
  if (after === undefined || lobe === undefined)
    return kept === undefined ? undefined : within(kept, 0, `net lift ${inches(kept)}, kept with the build`);
  const hydraulic = isHydraulicLifter(evidence.engine.lifter);
  const inForce = after.lashIn || hydraulic ? 0 : lashInForce(evidence, sideOfValve(of.valve), place);
  const lash = inForce ?? 0;
  const at = (ratio: number) => lobe * ratio - lash;
  if (at(after.low) <= 0) return undefined;
  const said = `${inForce === undefined ? 'gross lift, no lash known,' : 'net lift'} ${inches(at(after.value))}: lobe ${inches(lobe)} by ${after.from === 'measured' ? ratioSaid(after.value) : after.said}${lash > 0 ? ', less the lash' : ''}${after.lashIn ? ', lash left in as read' : ''}`;
  return { value: at(after.value), low: at(after.low), high: at(after.high), said, restsOn: after.restsOn };
}

const swept = (arm: number, lift: number): number =>
  rollerSweep.compute({ pivotToTip: arm, netLift: lift, setAt: 'mid-lift' }).leastSweep;

/** The least sweep that the lift of this valve, or side, can have on this arm, by the registered computation. */
export function leastSweepOf(
  evidence: Evidence,
  of: SweepOf,
  ratios: readonly ValveRatio[],
): LeastSweepDetail {
  const [arm, lift] = [armOf(evidence), liftOf(evidence, of, ratios)];
  const lacks = [
    ...(arm === undefined
      ? [`pivot to tip of the ${evidence.engine.gear === 'finger-follower' ? 'follower' : 'arm'}`]
      : []),
    ...(lift === undefined ? [`lobe lift of the ${of.valve} and a ratio`] : []),
  ];
  if (arm === undefined || lift === undefined) return { from: [], lacks, restsOn: [] };
  const from = [lift.said, arm.said];
  const restsOn = [...lift.restsOn, ...arm.restsOn].sort();
  try {
    const value = swept(arm.value, lift.value);
    return {
      value,
      arm: arm.value,
      lift: lift.value,
      low: Math.min(swept(arm.high, lift.low), value - FINEST),
      high: Math.max(swept(arm.low, lift.high), value + FINEST),
      from,
      lacks,
      restsOn,
    };
  } catch (error) {
    // More lift than the arm can give: one of the two is wrong, and both are asked for again.
    if (!(error instanceof InputFaults)) throw error;
    return { from, lacks: ['a lift and an arm that go together'], restsOn };
  }
}
