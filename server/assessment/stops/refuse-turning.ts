import { Failure } from '../../problems/failure.ts';
import type { TurningCheck } from '../../records/calls/stop-signs.ts';
import { standingStops } from './standing.ts';

/** Nobody can see from here whether a reading that comes after a stop was taken before it, so it waits for the desk. */
const READ_BEFORE =
  'Nothing of this was kept. If it was read before the stop, put it in a note now with the time it was read, and send it again once the desk has lifted the stop.';

/**
 * Refuses a command that takes turning the engine while any stop stands, whoever set it or whatever raised it. Called
 * with the build locked: a stop that another command raises meanwhile comes before or after it, not beside it.
 */
export const refuseTurning: TurningCheck = async (tx, principal, buildId, open) => {
  const stop = await standingStops(tx, principal, buildId);
  if (stop.length > 0)
    throw new Failure('held', [...stop.map(({ sentence }) => sentence), open ?? READ_BEFORE].join(' '));
};
