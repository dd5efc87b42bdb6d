import { defined } from '../../../shared/defined.ts';
import { type Principal, requireDesk } from '../../auth/principal.ts';
import type { Tx } from '../../database/database.ts';
import type { StopReason } from '../../mechanics/assessment/assessment.ts';
import { stopsOf } from '../../mechanics/assessment/stops-of.ts';
import { Failure } from '../../problems/failure.ts';
import type { Call } from '../../records/calls/calls.ts';
import { changeCall } from '../../records/calls/change-call.ts';
import { TRIAGE_EVENTS } from '../../records/calls/events.ts';
import { takeOffHolds } from '../../records/calls/hold.ts';
import { callOf } from '../../records/whole-build/build-record.ts';
import { loadBuildRecord } from '../../records/whole-build/load-build.ts';
import { evidenceOf } from '../evidence.ts';

/** What has to be answered, corrected or struck out before a person's word can lift the rest. */
export const unanswered = (stop: readonly StopReason[]): StopReason[] =>
  stop.filter(({ answered }) => !answered);

/** Only the desk lifts a stop, and says why; not while a reason from the readings stands unanswered. */
export function liftStop(tx: Tx, principal: Principal, callId: string, reason: string): Promise<Call> {
  requireDesk(principal, 'write');
  return changeCall(tx, principal, callId, async (call, emit) => {
    // Read while the build is locked: the call as it was before may have been put on hold meanwhile.
    const record = await loadBuildRecord(tx, principal, { callId }, { catalogue: 'no', access: 'write' });
    const stop = stopsOf(evidenceOf(record, callOf(record, callId)));
    if (stop.length === 0) throw new Failure('conflict', 'nothing stops this call');
    const [open] = unanswered(stop);
    if (open !== undefined) throw new Failure('conflict', `${open.sentence} First: ${open.wayOut}`);
    await emit(TRIAGE_EVENTS['hold-lifted'], {
      callId,
      reason,
      was: call.holdReason,
      stops: stop.map(({ id, entryId }) => ({ stopId: id, ...defined({ entryId }) })),
    });
    await takeOffHolds(tx, principal, call.buildId);
    return { held: false, hold_reason: '' };
  });
}
