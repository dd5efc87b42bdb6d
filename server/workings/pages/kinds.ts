import type { Quantity } from '../../../shared/quantities/units.ts';
import type { BuildSpec } from '../../../shared/schemas/build-spec.ts';

/** The computations that each step of this kind works with, the usual one first. */
export const WORKED_IN = {
  geometry: ['roller-sweep', 'linkage'],
  timing: ['top-dead-centre', 'centreline', 'cam-timing'],
  adjuster: ['adjuster', 'lash-hot-cold'],
} as const;

export type WorkedStep = keyof typeof WORKED_IN;

const bare = (quantity: Quantity | undefined) =>
  quantity === undefined ? undefined : { value: quantity.value, unit: quantity.unit };

/** Net lift of the intake with the ratio the rockers are sold as. */
function netLift(spec: BuildSpec): Quantity | undefined {
  const lobe = spec.cam?.intake?.lobeLift;
  const ratio = spec.rockers?.nominalRatio;
  if (lobe === undefined || ratio === undefined) return undefined;
  return { value: Number((lobe.value * ratio).toFixed(5)), unit: lobe.unit };
}

/** What the build already says, as the body of a computation begun but not complete. */
export function knownOf(name: string, spec: BuildSpec): Record<string, unknown> {
  const { cam, rockers, engine } = spec;
  const lobe = (which: 'intake' | 'exhaust') => {
    const duration = bare(cam?.[which]?.durations?.[0]?.duration);
    const centreline = bare(cam?.[which]?.centreline);
    return duration === undefined && centreline === undefined ? undefined : { duration, centreline };
  };
  switch (name) {
    case 'roller-sweep':
      return { netLift: netLift(spec), setAt: 'mid-lift' };
    case 'linkage':
      return { netLift: netLift(spec) };
    case 'centreline':
      return { side: 'intake', card: bare(cam?.intake?.centreline) };
    case 'cam-timing':
      return { intake: lobe('intake'), exhaust: lobe('exhaust') };
    case 'adjuster':
      return {
        ratio: rockers?.nominalRatio,
        mount: engine?.rockerMounting === 'stud' ? 'stud-nut' : undefined,
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
