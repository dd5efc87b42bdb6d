import { z } from 'zod';
import { keysOf, VALVES } from '../../../shared/schemas/words.ts';
import { defineEvents } from '../../events/define-events.ts';

/** Arms with their three marks, and where each sits. */
export const ARM_EVENTS = defineEvents({
  'arm-added': z.object({
    armId: z.uuid(),
    name: z.string(),
    family: z.string(),
    ratioStamp: z.string(),
    otherNumber: z.string(),
    boxLabel: z.string(),
  }),
  /** Its marks were read again: all three as they stand now. */
  'arm-marked': z.object({
    armId: z.uuid(),
    /** What the arm is called. */
    arm: z.string(),
    ratioStamp: z.string(),
    otherNumber: z.string(),
    boxLabel: z.string(),
    reason: z.string(),
  }),
  'arm-placed': z.object({
    /** What the arm was called then. */
    arm: z.string(),
    armId: z.uuid(),
    cylinder: z.int(),
    valve: z.enum(keysOf(VALVES)),
    reason: z.string(),
  }),
});
