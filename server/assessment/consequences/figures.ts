import { UNITS } from '../../../shared/quantities/units.ts';
import type { BuildSpec } from '../../../shared/schemas/build-spec.ts';
import type { Entered } from '../../../shared/schemas/entered.ts';
import { siOf } from '../../../shared/schemas/entered.ts';
import { GAP_KINDS, type GapKind } from '../../../shared/schemas/sheet.ts';
import type { ConsequenceInput, LimitFigure } from '../../mechanics/consequences/types.ts';
import { STATED_RATIO } from '../../mechanics/kit/allowances.ts';
import type { LimitName } from '../../mechanics/kit/limits.ts';
import type { Limit } from '../../records/limits/known-limits.ts';
import type { SetUpRatio } from '../ratio/ratio.ts';
import type { MeasuredOnValve } from './measured-gaps.ts';

const given = <Key extends string>(key: Key, entry: Entered | undefined): Partial<Record<Key, number>> => {
  const found: Partial<Record<Key, number>> = {};
  if (entry !== undefined) found[key] = siOf(entry);
  return found;
};

/** Lobe lift as the ratio was taken over it; else that of the card. */
function lobeLiftOf(found: SetUpRatio, spec: BuildSpec): number | undefined {
  const lobe = found.input?.lobeLift;
  if (lobe?.value !== undefined) return lobe.value;
  const readings = lobe?.readings ?? [];
  if (readings.length > 0) return readings.reduce((sum, each) => sum + each, 0) / readings.length;
  const card = spec.cam?.[found.setUp.valve]?.lobeLift;
  return card === undefined ? undefined : siOf(card);
}

const limitNameOf = (kind: GapKind, side: 'intake' | 'exhaust'): LimitName =>
  kind === 'piston-to-valve' ? `piston-to-valve-${side}` : kind;

/** The limits of the seven gaps of one side, as the shop has them now. */
export function limitsFor(
  limits: ReadonlyMap<LimitName, Limit>,
  side: 'intake' | 'exhaust',
): { readonly figures: Record<GapKind, LimitFigure>; readonly used: readonly Limit[] } {
  const limitOf = (kind: GapKind): Limit => {
    const limit = limits.get(limitNameOf(kind, side));
    if (limit === undefined) throw new Error(`there is no limit for ${kind}`);
    return limit;
  };
  const figure = (kind: GapKind): LimitFigure => {
    const { value, source } = limitOf(kind);
    return { value: value.value * UNITS[value.unit].toSi, source };
  };
  return {
    figures: {
      'coil-bind': figure('coil-bind'),
      'retainer-to-seal': figure('retainer-to-seal'),
      'piston-to-valve': figure('piston-to-valve'),
      'pushrod-to-head': figure('pushrod-to-head'),
      'slot-to-stud': figure('slot-to-stud'),
      'rocker-to-retainer': figure('rocker-to-retainer'),
      cover: figure('cover'),
    },
    used: GAP_KINDS.map(limitOf),
  };
}

function ratiosOf(found: SetUpRatio, spec: BuildSpec): Pick<ConsequenceInput, 'before' | 'after'> {
  const stated = spec.cam?.assumedRatio;
  const { result, setUp } = found;
  const { spring } = setUp.method;
  return {
    ...(stated === undefined ? {} : { before: { value: stated, halfWidth: stated * STATED_RATIO.share } }),
    ...(result === undefined || spring === 'not-said'
      ? {}
      : {
          after: {
            value: result.ratio,
            halfWidth: (result.interval95[1] - result.interval95[0]) / 2,
            spring,
          },
        }),
  };
}

/** Everything known of the set-up's valve, in SI. */
export function consequenceInput(
  found: SetUpRatio,
  spec: BuildSpec,
  measured: MeasuredOnValve,
  limits: Readonly<Record<GapKind, LimitFigure>>,
): ConsequenceInput {
  const side = found.setUp.valve;
  const { engine, springs, rockers } = spec;
  const lobe = spec.cam?.[side];
  const gaps = spec.clearances?.[side];
  const lobeLift = lobeLiftOf(found, spec);
  return {
    side,
    ...ratiosOf(found, spec),
    ...(lobeLift === undefined ? {} : { lobeLift }),
    ...given('lash', lobe?.lash),
    ...(engine?.lifter === undefined
      ? {}
      : { lifter: engine.lifter.startsWith('solid') ? 'solid' : 'hydraulic' }),
    ...(engine?.rockerMounting === undefined ? {} : { mounting: engine.rockerMounting }),
    spring: {
      ...given('installedHeight', springs?.installedHeight),
      ...given('seatLoad', springs?.seatLoad),
      ...given('rate', springs?.rate),
      ...given('solidHeight', springs?.solidHeight),
      ...given('retainerToSeal', springs?.retainerToSeal),
    },
    crank: {
      ...given('stroke', engine?.stroke),
      ...given('rodLength', engine?.rodLength),
      ...given('pinOffset', engine?.pinOffset),
      ...given('valveAngle', engine?.valveAngle),
    },
    lobe: {
      ...given('centreline', lobe?.centreline),
      ...(lobe?.durations === undefined || lobe.durations.length === 0
        ? {}
        : {
            durations: lobe.durations.map((each) => ({
              atLift: siOf(each.atLift),
              duration: siOf(each.duration),
            })),
          }),
    },
    ...given('closedGapAtTdc', gaps?.closedGapAtTdc),
    ...(gaps?.pistonFloor === undefined ? {} : { pistonFloor: gaps.pistonFloor }),
    ...given('pushrodToHead', gaps?.pushrodToHead),
    ...given('pivotToTip', rockers?.pivotToTip),
    measured: { these: measured.these, before: measured.before },
    limits,
  };
}
