import type { z } from 'zod';
import type { triage } from '../../../shared/schemas/commands.ts';
import type { Principal } from '../../auth/principal.ts';
import type { Tx } from '../../database/database.ts';
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

/** Takes the hold off every call about the build: it is one engine. */
export async function takeOffHolds(tx: Tx, principal: Principal, buildId: string): Promise<void> {
  await tx
    .updateTable('call')
    .set({ held: false, hold_reason: '' })
    .where('shop_id', '=', principal.shopId)
    .where('build_id', '=', buildId)
    .where('held', '=', true)
    .execute();
}
