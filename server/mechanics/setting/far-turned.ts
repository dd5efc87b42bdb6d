import { impossible } from '../../../shared/problems/faults.ts';
import { CAN_BE } from '../../../shared/schemas/can-be.ts';
import { EQUAL } from '../kit/nearest.ts';
import { saidLength } from '../kit/said.ts';
import { IN } from '../kit/si.ts';
import { unlikelyLash } from '../lash/lash-slips.ts';
import { USUAL_TRAVEL } from './usual-travel.ts';

/** Fractions of a turn whose stroke is easily left out. */
const STROKE_LEFT_OUT: Readonly<Record<number, string>> = { 12: '1/2', 13: '1/3', 14: '1/4' };

const meantSaid = (turns: number): string => {
  const meant = STROKE_LEFT_OUT[Math.abs(turns)];
  return meant === undefined ? 'Was another count meant?' : `Was ${meant} meant?`;
};

const turnsSaid = (turns: number): string =>
  `${Math.abs(turns)} turn${Math.abs(turns) === 1 ? '' : 's'} of this thread`;

const TRULY = 'If it was really turned so far, leave the engine still and back it off first';

/** Refuses turns that press a plunger further than any goes. */
export function checkPlunger(turns: number, pressed: number): void {
  const { most } = CAN_BE.plungerTravel;
  if (pressed <= most + 1e-9 * IN) return;
  impossible(
    ['turns'],
    `${turnsSaid(turns)} would press the plunger ${saidLength(pressed)}; none goes further than ${saidLength(most)}. ${meantSaid(turns)} ${TRULY}`,
  );
}

/** Refuses turns that change a lash by more than any gap. */
export function checkGap(turns: number, change: number): void {
  const { most } = CAN_BE.lashFound;
  if (Math.abs(change) <= most + 1e-9 * IN) return;
  impossible(
    ['turns'],
    `${turnsSaid(turns)} would change the lash by ${saidLength(Math.abs(change))}; up to ${saidLength(most)} can be. ${meantSaid(turns)}${change < 0 ? ` ${TRULY}` : ''}`,
  );
}

/** Further than a usual plunger goes it is cautioned of, wherever it is computed. */
export function farCautions(pressed: number, travel?: number): string[] {
  if (travel !== undefined || pressed <= USUAL_TRAVEL + EQUAL) return [];
  return [
    `Most plungers go no further than ${saidLength(USUAL_TRAVEL)}: this one may stand on its bottom and hold the valve open. Ask its maker for the travel, and count the turns again.`,
  ];
}

/** A lash that hardly any cam asks for, and hardly any valve is found at. */
export function farLashCautions(...lashes: readonly (number | undefined)[]): string[] {
  const far = lashes.find((lash) => lash !== undefined && unlikelyLash(lash) !== undefined);
  return far === undefined
    ? []
    : [`A lash of ${saidLength(far)} is hardly ever set or found: read the entry and its unit back.`];
}
