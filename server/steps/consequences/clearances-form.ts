import type { CallContext } from '../../call/context.ts';
import type { PageForm } from '../../call/forms.ts';
import type { SpecGroup } from '../../call/spec/spec-fields.ts';
import { type OtherSide, specForm } from '../../call/spec/spec-form.ts';

const FLOORS = { pocket: 'A pocket cut to the valve’s angle', flat: 'A flat crown' };

/** What is taken once on the engine and calculated from, of one side. */
const clearances = (side: 'intake' | 'exhaust'): SpecGroup => ({
  legend: `Taken on the engine, ${side}`,
  fields: [
    {
      path: `clearances.${side}.closedGapAtTdc`,
      label: `Closed valve to piston at TDC, ${side}`,
      dimension: 'length',
      hint: 'Along the valve: push the shut valve down to the piston by hand, light spring, by hand only.',
    },
    { path: `clearances.${side}.pistonFloor`, label: `Piston under the valve, ${side}`, words: FLOORS },
    {
      path: `clearances.${side}.lobeLiftAtClosest`,
      label: `Lobe lift where the piston was closest, ${side}`,
      dimension: 'length',
      hint: 'Where a gap was read: at the lifter, crank held there. By so much another ratio counts.',
    },
    {
      path: `clearances.${side}.pushrodToHead`,
      label: `Pushrod to head slot, ${side}`,
      dimension: 'length',
      hint: 'Read with the arms that are on now.',
    },
  ],
});

const ROCKER: SpecGroup = {
  legend: 'The rocker',
  fields: [{ path: 'rockers.pivotToTip', label: 'Rocker pivot to the roller’s centre', dimension: 'length' }],
};

/** The form for what the gaps still lack and no other step asks for. */
export const clearancesForm = (context: CallContext, other?: OtherSide): PageForm =>
  specForm({
    name: 'clearances',
    action: `${context.base}/spec/clearances`,
    groups: [clearances('intake'), clearances('exhaust'), ROCKER],
    spec: context.build.spec,
    revision: context.build.revision,
    other,
    bench: context.side === 'bench',
    alone: false,
    part: 'clearances',
  });
