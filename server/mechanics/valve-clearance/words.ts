import { limitSource } from '../kit/limits.ts';
import type { LiftCurve } from '../lobe/lift-curve.ts';

/** Said where the figures make the gap nothing. */
export const wouldMeet = 'Valve and piston would meet: do not turn the engine through it.';

/** Said where a clearance is not clear of its limit. */
export const qualifiedShop = 'Under the limit or too near to tell: have a qualified shop look first.';

/** Said wherever a clearance is set against a default. */
export const makerClearanceFirst =
  'The part maker’s own clearance goes before any default; check the valve’s edge in the pocket as well, and both again with the cam as finally set.';

interface Given {
  readonly side: 'intake' | 'exhaust';
  readonly pinOffset?: number | undefined;
  readonly lash?: number | undefined;
  readonly advance?: number | undefined;
  readonly limit?: number | undefined;
}

/** What a clearance assumes, the inputs left out among it. */
export function clearanceAssumptions(given: Given, law: string): string[] {
  return [
    'rigid parts: no piston rock, rod stretch, valve float or pump-up',
    `lift between the figures given: ${law}`,
    'crank angles count from the piston’s true top',
    ...(given.pinOffset === undefined ? ['no pin offset'] : []),
    ...(given.lash === undefined ? ['no lash taken off the lift: the smallest gap'] : []),
    ...(given.advance === undefined ? ['cam set as the figures have it, neither advanced nor retarded'] : []),
    ...(given.limit === undefined ? [`default limit: ${limitSource(`piston-to-valve-${given.side}`)}`] : []),
  ];
}

/** What a clearance must warn of: gaps that settle nothing, and contact. */
export function clearanceCautions(
  lobe: LiftCurve,
  result: { readonly atCrankAngle: number; readonly margin: number; readonly verdict: string },
): string[] {
  const atEdge =
    (result.atCrankAngle === lobe.from && !lobe.closedBefore) ||
    (result.atCrankAngle === lobe.to && !lobe.closedAfter);
  return [
    ...(atEdge ? ['The least gap is at the edge of the readings: read further, it may get less.'] : []),
    ...(result.margin <= 0 ? [wouldMeet] : []),
    ...(result.verdict === 'clear' ? [] : [qualifiedShop]),
    makerClearanceFirst,
  ];
}
