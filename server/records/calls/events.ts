import { z } from 'zod';
import { CONTACT, ENGINE_STATES, GOALS, keysOf } from '../../../shared/schemas/words.ts';
import { defineEvents } from '../../events/define-events.ts';

/** A call's opening and its end. */
export const CALL_EVENTS = defineEvents({
  'call-opened': z.object({ callId: z.uuid(), number: z.int(), goal: z.enum(keysOf(GOALS)) }),
  'call-closed': z.object({ callId: z.uuid(), outcome: z.string() }),
});

/** The first question of a call, and whether the engine may be turned. */
export const TRIAGE_EVENTS = defineEvents({
  triage: z.object({
    callId: z.uuid(),
    engineState: z.enum(keysOf(ENGINE_STATES)),
    contact: z.enum(keysOf(CONTACT)),
  }),
  'hold-set': z.object({ callId: z.uuid(), reason: z.string() }),
  'hold-lifted': z.object({
    callId: z.uuid(),
    reason: z.string(),
    /** Why it was held. */
    was: z.string(),
    /** The reasons that stood and were lifted, by name; with the entry that had raised one. */
    stops: z.array(z.object({ stopId: z.string(), entryId: z.string().optional() })).default([]),
  }),
});
