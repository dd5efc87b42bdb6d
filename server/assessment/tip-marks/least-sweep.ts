import { z } from 'zod';
import { InputFaults } from '../../../shared/problems/faults.ts';
import { formatQuantity } from '../../../shared/quantities/format.ts';
import { fromSi } from '../../../shared/quantities/units.ts';
import type { BuildSpec } from '../../../shared/schemas/build-spec.ts';
import { siOf } from '../../../shared/schemas/entered.ts';
import { computation as rollerSweep } from '../../mechanics/computations/roller-sweep.ts';
import { stillStanding } from '../../records/corrections/entries.ts';
import type { PartReading } from '../../records/part-readings/part-readings.ts';
import type { Working } from '../../records/workings/workings.ts';

type Side = 'intake' | 'exhaust';

/** What the least sweep of one side is calculated from, and in whose words; or what is missing for it. */
export interface LeastSweep {
  /** Metres. */
  readonly value: number | undefined;
  readonly from: readonly string[];
  readonly missing: readonly string[];
}

interface Known {
  /** Metres. */
  readonly value: number;
  readonly said: string;
}

const text = (si: number): string => formatQuantity(fromSi(si, 'in'), { places: 3 });

const keptSweep = z.object({ inputs: z.unknown() });

/** The lengths of the roller sweep that was kept last. */
function kept(workings: readonly Working[]): { arm: Known; lift: Known } | undefined {
  const last = workings.findLast(({ computation }) => computation === rollerSweep.name);
  if (last === undefined) return undefined;
  const read = rollerSweep.input.safeParse(keptSweep.parse(last).inputs);
  if (!read.success) return undefined;
  const { pivotToTip, netLift } = read.data;
  return {
    arm: { value: pivotToTip, said: `pivot to tip ${text(pivotToTip)}, line ${last.seq}` },
    lift: { value: netLift, said: `net lift ${text(netLift)}, line ${last.seq}` },
  };
}

/** The arm as it was kept, as the build has it, or as the part in the hand was read. */
function armOf(spec: BuildSpec, parts: readonly PartReading[], last: Known | undefined): Known | undefined {
  if (last !== undefined) return last;
  const told = spec.rockers?.pivotToTip;
  if (told !== undefined) return { value: siOf(told), said: `pivot to tip ${told.readAs}, from the build` };
  const read = stillStanding(parts).findLast(({ kind }) => kind === 'pivot-to-tip');
  if (read?.size === undefined) return undefined;
  return { value: siOf(read.size), said: `pivot to tip ${read.readAs}, line ${read.seq}` };
}

/** Lobe lift times ratio less lash; the ratio measured on the light spring where there is one. */
function liftOf(
  spec: BuildSpec,
  side: Side,
  measured: number | undefined,
  last: Known | undefined,
): Known | undefined {
  const lobe = spec.cam?.[side];
  const ratio = measured ?? spec.rockers?.nominalRatio;
  if (lobe?.lobeLift === undefined || ratio === undefined) return last;
  const lash = lobe.lash === undefined ? 0 : siOf(lobe.lash);
  const value = siOf(lobe.lobeLift) * ratio - lash;
  if (value <= 0) return last;
  const of = measured === undefined ? 'the ratio they are sold as' : 'the light ratio measured';
  return {
    value,
    said: `net lift ${text(value)} on the ${side}: lobe ${lobe.lobeLift.readAs} by ${of}${lash > 0 ? ', less lash' : ''}`,
  };
}

/** The least sweep that this side's lift can have on this arm, by the registered computation. */
export function leastSweepOf(
  side: Side,
  given: {
    readonly spec: BuildSpec;
    readonly parts: readonly PartReading[];
    readonly workings: readonly Working[];
    /** Light ratio measured on this side, if any. */
    readonly measured: number | undefined;
  },
): LeastSweep {
  const last = kept(given.workings);
  const arm = armOf(given.spec, given.parts, last?.arm);
  const lift = liftOf(given.spec, side, given.measured, last?.lift);
  const missing = [
    ...(arm === undefined ? ['pivot to tip of the arm'] : []),
    ...(lift === undefined ? [`lobe lift of the ${side} and a ratio`] : []),
  ];
  if (arm === undefined || lift === undefined) return { value: undefined, from: [], missing };
  try {
    const swept = rollerSweep.compute({ pivotToTip: arm.value, netLift: lift.value, setAt: 'mid-lift' });
    return { value: swept.leastSweep, from: [lift.said, arm.said], missing };
  } catch (error) {
    // More lift than the arm can give: one of the two is wrong, and the step asks for both again.
    if (!(error instanceof InputFaults)) throw error;
    return { value: undefined, from: [lift.said, arm.said], missing: ['a lift and an arm that go together'] };
  }
}
