import { fromSi } from '../../../shared/quantities/units.ts';
import type { Component } from '../../../views/parts/part.ts';
import type { SetUpConsequences } from '../../assessment/consequences/consequences.ts';
import { rulerOf } from '../../drawings/drawing.ts';
import { type ValveMargins, valveMargins } from '../../drawings/valve-margins.ts';
import { computation as lobeProfile } from '../../mechanics/computations/lobe-profile.ts';
import { pistonSweep } from '../../mechanics/consequences/piston-gap.ts';

const inches = (si: number): number => fromSi(si, 'in').value;

/** Valve and piston where they come closest, as calculated for the measured ratio. */
function closestOf({ input, gaps }: SetUpConsequences): ValveMargins['piston'] | undefined {
  const row = gaps.find((gap) => gap.name === 'piston-to-valve');
  const { after, closedGapAtTdc, lobeLift, lobe } = input;
  if (row?.after?.basis !== 'calculated' || after === undefined || closedGapAtTdc === undefined)
    return undefined;
  if (lobeLift === undefined || lobe.centreline === undefined || lobe.durations === undefined)
    return undefined;
  const { margin, atCrankAngle } = pistonSweep(input, after.value, closedGapAtTdc);
  const { lifts } = lobeProfile.compute({
    lobeLift,
    centreline: lobe.centreline,
    durations: lobe.durations.map((each) => ({ ...each })),
    side: input.side,
    crankAngles: [atCrankAngle],
  });
  const degrees = fromSi(atCrankAngle, 'deg').value;
  return {
    lift: inches((lifts[0] ?? 0) * after.value),
    gap: inches(margin),
    atCrank: `${Math.abs(degrees).toFixed(0)}° ${degrees < 0 ? 'before' : 'after'} TDC`,
  };
}

/** The valve drawn to scale, once the spring's height and the lift are known. */
export function marginsDrawing(found: SetUpConsequences): Component[] {
  const { spring } = found.input;
  const netLift = found.figures.find((row) => row.name === 'net-lift')?.after;
  if (spring.installedHeight === undefined || netLift === undefined || netLift >= spring.installedHeight)
    return [];
  const piston = closestOf(found);
  const data: ValveMargins = {
    installedHeight: inches(spring.installedHeight),
    netLift: inches(netLift),
    ...(spring.solidHeight === undefined ? {} : { solidHeight: inches(spring.solidHeight) }),
    ...(spring.retainerToSeal === undefined ? {} : { retainerToSeal: inches(spring.retainerToSeal) }),
    ...(piston === undefined ? {} : { piston }),
  };
  return [
    {
      template: '/parts/drawing',
      data: valveMargins(data, { id: 'drawing-margins', ruler: rulerOf('inch') }),
    },
  ];
}
