import type { z } from 'zod';
import type { triage } from '../../../shared/schemas/commands.ts';
import { type Principal, requireDesk } from '../../auth/principal.ts';
import type { Tx } from '../../database/database.ts';
import { Failure } from '../../problems/failure.ts';
import type { Call } from './calls.ts';
import { changeCall } from './change-call.ts';
import { TRIAGE_EVENTS } from './events.ts';

const HOLD_ON_CONTACT = 'something hit, bent, came loose or turns tight';

/** Records the first question of a call. Where something hit, bent or came loose, the hold is set at once. */
export function recordTriage(
  tx: Tx,
  principal: Principal,
  callId: string,
  input: z.output<typeof triage>,
): Promise<Call> {
  return changeCall(tx, principal, callId, async (call, emit) => {
    const { engineState, contact } = input;
    const answered = { engine_state: engineState, contact };
    await emit(TRIAGE_EVENTS.triage, { callId, engineState, contact });
    if (contact !== 'something' || call.held) return answered;
    await emit(TRIAGE_EVENTS['hold-set'], { callId, reason: HOLD_ON_CONTACT });
    return { ...answered, held: true, hold_reason: HOLD_ON_CONTACT };
  });
}

/** Anyone on the call may say stop. */
export function setHold(tx: Tx, principal: Principal, callId: string, reason: string): Promise<Call> {
  return changeCall(tx, principal, callId, async (_, emit) => {
    await emit(TRIAGE_EVENTS['hold-set'], { callId, reason });
    return { held: true, hold_reason: reason };
  });
}

/** Only the desk lifts a hold, and says why. */
export function liftHold(tx: Tx, principal: Principal, callId: string, reason: string): Promise<Call> {
  requireDesk(principal, 'write');
  return changeCall(tx, principal, callId, async (call, emit) => {
    if (!call.held) throw new Failure('conflict', 'this call is not on hold');
    await emit(TRIAGE_EVENTS['hold-lifted'], { callId, reason, was: call.holdReason });
    return { held: false, hold_reason: '' };
  });
}

/** Refuses a step that turns the engine while any open call of the build is held. */
export async function refuseWhileHeld(tx: Tx, principal: Principal, buildId: string): Promise<void> {
  const held = await tx
    .selectFrom('call')
    .select('hold_reason')
    .where('shop_id', '=', principal.shopId)
    .where('build_id', '=', buildId)
    .where('held', '=', true)
    .executeTakeFirst();
  if (held !== undefined) throw heldFor(held.hold_reason);
}

export const heldFor = (reason: string): Failure => new Failure('held', `do not turn it: ${reason}`);
