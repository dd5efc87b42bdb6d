import { z } from 'zod';
import { answer, type Fields } from '../../../shared/schemas/answer.ts';
import { moment } from '../../../shared/schemas/answer-parts.ts';
import type { Call } from './calls.ts';

export const callView = z
  .object({
    id: z.uuid(),
    number: z.int(),
    buildId: z.uuid(),
    callerName: z.string(),
    callerRole: z.string(),
    callBack: z.string(),
    goal: z.string(),
    engineState: z.string(),
    contact: z.string(),
    held: z.boolean().meta({ description: 'a person said stop on this call' }),
    holdReason: z.string(),
    openedAt: moment,
    closedAt: moment.optional(),
  })
  .meta({ id: 'RecordedCall' });

/** The same of one call, for the answer it is a part of. */
export const callFields = (call: Call): Fields<typeof callView> => ({
  id: call.id,
  number: call.number,
  buildId: call.buildId,
  callerName: call.callerName,
  callerRole: call.callerRole,
  callBack: call.callBack,
  goal: call.goal,
  engineState: call.engineState,
  contact: call.contact,
  held: call.held,
  holdReason: call.holdReason,
  openedAt: call.openedAt.toISOString(),
  closedAt: call.closedAt?.toISOString(),
});

export const showCall = (call: Call) => answer(callView, callFields(call));
