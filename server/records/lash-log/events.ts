import { z } from 'zod';
import { ENGINE_HEAT, LASH_MOMENTS, NUT_STATES } from '../../../shared/schemas/lash-log.ts';
import { keysOf, VALVES } from '../../../shared/schemas/words.ts';
import { defineEvents } from '../../events/define-events.ts';

/** Lines of the lash log; a lash is a reading of the sheet, and is corrected as one. */
export const LASH_EVENTS = defineEvents({
  'lash-kept': z.object({
    cylinder: z.int(),
    valve: z.enum(keysOf(VALVES)),
    readAs: z.string(),
    moment: z.enum(keysOf(LASH_MOMENTS)),
    engine: z.enum(keysOf(ENGINE_HEAT)),
    nut: z.enum(keysOf(NUT_STATES)),
    /** A day, or nothing for the day it was entered. */
    readOn: z.string(),
    doneBy: z.string(),
    /** The shim that is in; nothing where none was said. */
    shim: z.string().default(''),
  }),
});
