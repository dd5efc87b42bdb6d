import { note, noted } from '../../events/tx-notes.ts';
import { Failure } from '../../problems/failure.ts';
import { SEND_LATER, type TurningCheck } from '../../records/calls/stop-signs.ts';
import { standingStops } from './standing.ts';

const READ_BEFORE = `Nothing of this was kept. ${SEND_LATER}`;

/**
 * Refuses a command that takes turning the engine while any stop stands, whoever set it or whatever raised it. Called
 * with the build locked: a stop that another command raises meanwhile comes before or after it, not beside it.
 */
export const refuseTurning: TurningCheck = async (tx, principal, buildId, open) => {
  const stop = await standingStops(tx, principal, buildId);
  if (stop.length === 0) return;
  // What was read before the stop is history, as whoever sends it says: it is kept with those words.
  if (noted(tx).saidBefore === true) note(tx, { beforeStop: true });
  else throw new Failure('held', [...stop.map(({ sentence }) => sentence), open ?? READ_BEFORE].join(' '));
};
