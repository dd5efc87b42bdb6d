import type { Quantity } from '../../../shared/quantities/units.ts';
import type { BuildSpec } from '../../../shared/schemas/build-spec.ts';

const bare = (quantity: Quantity | undefined) =>
  quantity === undefined ? undefined : { value: quantity.value, unit: quantity.unit };

/** Net lift of the intake with the ratio the rockers are sold as. */
function netLift(spec: BuildSpec): Quantity | undefined {
  const lobe = spec.cam?.intake?.lobeLift;
  const ratio = spec.rockers?.nominalRatio;
  if (lobe === undefined || ratio === undefined) return undefined;
  return { value: Number((lobe.value * ratio).toFixed(5)), unit: lobe.unit };
}

const AT_050 = { value: 0.05, unit: 'in' };

/** Duration of the card at .050 in of lobe lift, or the first one it has. */
export function cardDuration(spec: BuildSpec, side: 'intake' | 'exhaust'): Quantity | undefined {
  const all = spec.cam?.[side]?.durations ?? [];
  const at = all.find(({ atLift }) => atLift.value === AT_050.value && atLift.unit === AT_050.unit);
  return (at ?? all[0])?.duration;
}

/** What the build already says, as the body of a computation begun but not complete. */
export function knownOf(name: string, spec: BuildSpec): Record<string, unknown> {
  const { cam, rockers, engine } = spec;
  const lobe = (which: 'intake' | 'exhaust') => {
    const duration = bare(cardDuration(spec, which));
    const centreline = bare(cam?.[which]?.centreline);
    return duration === undefined && centreline === undefined ? undefined : { duration, centreline };
  };
  switch (name) {
    case 'roller-sweep':
      return { netLift: netLift(spec), pivotToTip: bare(rockers?.pivotToTip), setAt: 'mid-lift' };
    case 'linkage':
      return { netLift: netLift(spec), pivotToTip: bare(rockers?.pivotToTip) };
    case 'cam-timing':
      return { intake: lobe('intake'), exhaust: lobe('exhaust') };
    case 'adjuster':
      return {
        ratio: rockers?.nominalRatio,
        mount:
          engine?.rockerMounting === 'stud'
            ? 'stud-nut'
            : engine?.rockerMounting === 'shaft'
              ? 'cup-screw'
              : undefined,
        lifter:
          engine?.lifter === undefined
            ? undefined
            : engine.lifter.startsWith('hydraulic')
              ? 'hydraulic'
              : 'solid',
      };
    case 'lash-hot-cold':
      return { hotLash: bare(cam?.intake?.lash), ratio: rockers?.nominalRatio };
    default:
      return {};
  }
}
