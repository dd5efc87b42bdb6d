import { isHydraulicLifter, isSolidLifter } from '../../../shared/lifters.ts';
import { type Quantity, UNITS } from '../../../shared/quantities/units.ts';
import type { BuildSpec } from '../../../shared/schemas/build-spec.ts';

const bare = (quantity: Quantity | undefined) =>
  quantity === undefined ? undefined : { value: quantity.value, unit: quantity.unit };

/** Net lift of the intake with the ratio the rockers are sold as; a solid lifter’s lash is taken off. */
function netLift(spec: BuildSpec): Quantity | undefined {
  const { lobeLift: lobe, lash } = spec.cam?.intake ?? {};
  const ratio = spec.rockers?.nominalRatio;
  if (lobe === undefined || ratio === undefined) return undefined;
  const solid = isSolidLifter(spec.engine?.lifter);
  const off = solid && lash !== undefined ? (lash.value * UNITS[lash.unit].toSi) / UNITS[lobe.unit].toSi : 0;
  return { value: Number((lobe.value * ratio - off).toFixed(5)), unit: lobe.unit };
}

/** Where the screw is, as far as the valve gear and the mounting say it. */
function adjusterMount({ engine }: BuildSpec): 'stud-nut' | 'cup-screw' | 'valve-end-screw' | undefined {
  if (engine?.valveGear === 'cam-rocker') return 'valve-end-screw';
  if (engine?.rockerMounting === 'stud') return 'stud-nut';
  return engine?.rockerMounting === 'shaft' ? 'cup-screw' : undefined;
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
    case 'stand-height':
      return { netLift: netLift(spec), pivotToTip: bare(rockers?.pivotToTip) };
    case 'pushrod-length':
      return { lash: bare(cam?.intake?.lash), ratio: rockers?.nominalRatio };
    case 'lifter-preload':
      return { ratio: rockers?.nominalRatio, mount: adjusterMount(spec) };
    case 'linkage':
      return { netLift: netLift(spec), pivotToTip: bare(rockers?.pivotToTip) };
    case 'cam-timing':
      return { intake: lobe('intake'), exhaust: lobe('exhaust') };
    case 'adjuster':
      return {
        ratio: rockers?.nominalRatio,
        mount: adjusterMount(spec),
        lifter:
          engine?.lifter === undefined ? undefined : isHydraulicLifter(engine.lifter) ? 'hydraulic' : 'solid',
      };
    case 'lash-hot-cold':
      return { hotLash: bare(cam?.intake?.lash), ratio: rockers?.nominalRatio };
    default:
      return {};
  }
}
