import { deg, inches } from './quantities.ts';

/** The arm from pivot to tip, in inches. */
export const ARM = 1.52;
/** The tip lies .300 below the pivot where the valve is shut, in degrees. */
export const CLOSED = (Math.asin(0.3 / ARM) * 180) / Math.PI;

/** An invented linkage: arms .95 and 1.52, 160° apart, pushrod 7.8 at 12°, bore at 10°. */
export const linkageBody = (netLift: number, more: object = {}) => ({
  pivotToTip: inches(ARM),
  pivotToCup: inches(0.95),
  armAngle: deg(160),
  tipAngleClosed: deg(CLOSED),
  pushrodLength: inches(7.8),
  pushrodAngle: deg(12),
  lifterBoreAngle: deg(10),
  netLift: inches(netLift),
  ...more,
});
