import { z } from 'zod';
import { keysOf, LASH_STATES, LIFTERS, SPRINGS, VALVES } from '../../../shared/schemas/words.ts';
import { defineEvents } from '../../events/define-events.ts';

/** How readings are taken, said before the first. */
export const SET_UP_EVENTS = defineEvents({
  'set-up-started': z.object({
    setUpId: z.uuid(),
    number: z.int(),
    cylinder: z.int(),
    valve: z.enum(keysOf(VALVES)),
    spring: z.enum(keysOf(SPRINGS)),
    lifter: z.enum(keysOf(LIFTERS)),
    lash: z.enum(keysOf(LASH_STATES)),
  }),
});
