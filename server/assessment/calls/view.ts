import { z } from 'zod';
import { answer, type Fields } from '../../../shared/schemas/answer.ts';
import type { Principal } from '../../auth/principal.ts';
import type { Tx } from '../../database/database.ts';
import type { StopReason } from '../../mechanics/assessment/assessment.ts';
import { stopsOf } from '../../mechanics/assessment/stops-of.ts';
import type { Call } from '../../records/calls/calls.ts';
import type { ListedCall } from '../../records/calls/list-calls.ts';
import { callFields, callView } from '../../records/calls/view.ts';
import { type BuildRecord, callOf } from '../../records/whole-build/build-record.ts';
import { loadBuildRecord } from '../../records/whole-build/load-build.ts';
import { evidenceOf } from '../evidence.ts';
import { showStop, stopView } from '../view/stop.ts';

/** A call with what stops it now, so that a program sees what the pages say. */
export const judgedCallView = callView
  .extend({
    stopped: z.boolean().meta({
      description: 'nobody turns the engine: a person said stop, or what was told or read stops it',
    }),
    stop: z.array(stopView).meta({ description: 'why; the same as in the assessment of the build' }),
  })
  .meta({ id: 'Call' });

const judgedFields = (call: Call, stop: readonly StopReason[]): Fields<typeof judgedCallView> => ({
  ...callFields(call),
  stopped: stop.length > 0,
  stop: stop.map(showStop),
});

/** A call out of the record of its build. */
export function showCallOf(record: BuildRecord, callId: string) {
  const call = callOf(record, callId);
  return answer(judgedCallView, judgedFields(call, stopsOf(evidenceOf(record, call))));
}

/** A call as a command has left it. */
export async function showCallAfter(tx: Tx, principal: Principal, { id }: Pick<Call, 'id'>) {
  return showCallOf(
    await loadBuildRecord(tx, principal, { callId: id }, { catalogue: 'no', access: 'write' }),
    id,
  );
}

export const listedCallView = judgedCallView.extend({ buildLabel: z.string() }).meta({ id: 'ListedCall' });

export const showListedCall = (call: ListedCall, stop: readonly StopReason[]) =>
  answer(listedCallView, { ...judgedFields(call, stop), buildLabel: call.buildLabel });
