import { defined } from '../../../shared/defined.ts';
import { computation as retainerToSeal } from '../computations/retainer-to-seal.ts';
import { computation as springLoad } from '../computations/spring-load.ts';
import { allowance } from '../kit/allowances.ts';
import { goesSolidFirst } from '../springs/nested.ts';
import { type GapCalculation, known, lacking, together } from './gap-calculation.ts';
import { liftAtValve } from './net-lift.ts';
import { springNeeds } from './spring-needs.ts';
import type { ConsequenceInput, RatioFigure } from './types.ts';

/** Both gaps close by what the net lift grows: −L·(r₂ − r₁), with both ratios' intervals. */
function liftChange(input: ConsequenceInput) {
  return (before: RatioFigure, after: RatioFigure) => {
    const [one, two] = [liftAtValve(input, before), liftAtValve(input, after)];
    return { value: one.value - two.value, halfWidth: together(one.halfWidth, two.halfWidth) };
  };
}

const OF = { outer: 'the outer spring', inner: 'the inner spring', both: 'both springs' } as const;

/** Room to coil bind: installed height less net lift less solid height. */
export function coilBind(input: ConsequenceInput): GapCalculation {
  const { installedHeight, solidHeight, nest } = input.spring;
  const first = nest && goesSolidFirst(nest);
  return {
    ...defined({ of: first && OF[first] }),
    missing: [
      ...lacking({ 'lobe lift': input.lobeLift }),
      ...springNeeds(input.spring, ['installedHeight', 'solidHeight']),
    ],
    gap(ratio) {
      const lifted = liftAtValve(input, ratio);
      // The room does not hang on the loads, so they are left at zero.
      const { margin } = springLoad.compute({
        installedHeight: known(installedHeight, 'installed height'),
        solidHeight: known(solidHeight, 'coil-bind height'),
        netLift: lifted.value,
        seatLoad: 0,
        rate: 0,
      });
      const height = allowance('height-reading');
      return { value: margin, halfWidth: together(lifted.halfWidth, height, height) };
    },
    missingForChange: lacking({ 'lobe lift': input.lobeLift }),
    change: liftChange(input),
  };
}

/** Retainer to seal at full lift: the closed distance less net lift; no credit for what the train bends. */
export function sealGap(input: ConsequenceInput): GapCalculation {
  const closed = input.spring.retainerToSeal;
  return {
    missing: lacking({ 'lobe lift': input.lobeLift, 'the distance with the valve shut': closed }),
    gap(ratio) {
      const lifted = liftAtValve(input, ratio);
      const { margin } = retainerToSeal.compute({
        closedDistance: known(closed, 'retainer to seal'),
        netLift: lifted.value,
      });
      return { value: margin, halfWidth: together(lifted.halfWidth, allowance('height-reading')) };
    },
    missingForChange: lacking({ 'lobe lift': input.lobeLift }),
    change: liftChange(input),
  };
}
